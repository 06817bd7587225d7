package org.geneticsrules.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.Sets;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.pedigree.RandomPedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

@Once
class TableLaws {

    private static final PedigreeTable TABLE = PedigreeTable.of("random", "1");

    @Property(tries = 300)
    void what_was_written_reads_back(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.recorded(seed, 12);
        String written = PedigreeTable.write(pedigree);
        Pedigree read = TABLE.read(written);
        assertEquals(pedigree, read);
        assertEquals(written, PedigreeTable.write(read));
        assertEquals(pedigree, TABLE.read(("\uFEFF" + written).getBytes(StandardCharsets.UTF_8)));
        Statistics.label("several rows")
                .collect(written.lines().count() > pedigree.individuals().size() + 1)
                .coverage(c -> c.check(true).percentage(p -> p > 60));
        Statistics.label("alternatives")
                .collect(written.contains(" | "))
                .coverage(c -> c.check(true).percentage(p -> p > 60));
        Statistics.label("ascertainment")
                .collect(written.contains("ascertainment sign"))
                .coverage(c -> c.check(true).percentage(p -> p > 50));
        Statistics.label("guarded")
                .collect(written.contains("'="))
                .coverage(c -> c.check(true).percentage(p -> p > 20));
        Statistics.label("candidates")
                .collect(pedigree.litters().values().stream()
                        .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates several
                                && several.candidates().size() > 1))
                .coverage(c -> c.check(true).percentage(p -> p > 20));
    }

    @Property(tries = 300)
    void counted_kits_read_back_as_the_same_kits_with_other_ids(@ForAll long seed) {
        Pedigree pedigree = alike(RandomPedigree.recorded(seed, 12), new Random(seed));
        String written = PedigreeTable.writeCounted(pedigree);
        Pedigree read = TABLE.read(written);
        Set<String> named = needed(pedigree);
        assertEquals(Set.of(), Sets.difference(named, read.individuals().keySet()));
        named.forEach(id -> assertEquals(pedigree.individual(id), read.individual(id)));
        assertEquals(pedigree.individuals().size(), read.individuals().size());
        assertEquals(pedigree.litters().keySet(), read.litters().keySet());
        pedigree.litters().forEach((id, litter) -> {
            Litter again = read.litters().get(id);
            assertEquals(nameless(litter), nameless(again));
            assertEquals(kits(pedigree, litter), kits(read, again));
        });
        assertEquals(
                written.lines().count(),
                PedigreeTable.writeCounted(read).lines().count());
        Statistics.label("several alike")
                .collect(written.lines().count()
                        < PedigreeTable.write(pedigree).lines().count())
                .coverage(c -> c.check(true).percentage(p -> p > 8));
        Statistics.label("named kits beside counted ones")
                .collect(pedigree.litters().values().stream()
                        .anyMatch(litter ->
                                litter.kits().stream().anyMatch(named::contains) && !named.containsAll(litter.kits())))
                .coverage(c -> c.check(true).percentage(p -> p > 8));
        Statistics.label("candidates")
                .collect(pedigree.litters().values().stream()
                        .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates
                                && named.stream().noneMatch(litter.kits()::contains)))
                .coverage(c -> c.check(true).percentage(p -> p > 20));
    }

    /** The same with some kits recorded as the first of their litter. */
    private static Pedigree alike(Pedigree pedigree, Random random) {
        Set<String> needed = needed(pedigree);
        PedigreeBuilder builder = Pedigree.builder("random", "1");
        for (Individual one : pedigree.individuals().values()) {
            Optional<Litter> litter = pedigree.litterOf(one.id());
            boolean change = litter.isPresent() && !needed.contains(one.id()) && random.nextInt(3) > 0;
            builder.add(
                    change
                            ? called(
                                    one.id(),
                                    pedigree.individual(litter.get().kits().get(0)))
                            : one);
        }
        pedigree.litters().values().forEach(builder::add);
        return builder.build();
    }

    private static Individual called(String id, Individual like) {
        return new Individual(
                id,
                like.sex(),
                like.born(),
                like.population(),
                like.observations(),
                like.names(),
                like.tests(),
                like.hearing(),
                like.fertility());
    }

    /** Those whom a litter names as other than a kit, and founders. */
    private static Set<String> needed(Pedigree pedigree) {
        Set<String> needed = new TreeSet<>(pedigree.founders());
        for (Litter litter : pedigree.litters().values()) {
            litter.dam().ifPresent(needed::add);
            litter.fosterDam().ifPresent(needed::add);
            needed.addAll(litter.sires().males());
        }
        return needed;
    }

    private static Litter nameless(Litter litter) {
        return new Litter(
                litter.id(),
                litter.dam(),
                litter.sires(),
                litter.born(),
                litter.bornCount(),
                litter.scoredCount(),
                litter.fosterDam(),
                List.of(),
                litter.ascertainment());
    }

    /** How many kits there are of each kind of records. */
    private static Map<Individual, Long> kits(Pedigree pedigree, Litter litter) {
        return litter.kits().stream()
                .collect(Collectors.groupingBy(kit -> called("kit", pedigree.individual(kit)), Collectors.counting()));
    }

    @Property(tries = 100)
    void other_words_in_the_header_change_nothing_else(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.recorded(seed, 8);
        ColumnNames words = ColumnNames.standard()
                .with(Column.ID, "ring")
                .with(Column.DAM, "mother")
                .withBeginnings("shows ", "gene ");
        assertEquals(pedigree, TABLE.columns(words).read(PedigreeTable.write(pedigree, words)));
    }

    @Property(tries = 100)
    void no_cell_begins_as_a_formula(@ForAll long seed) {
        String written = PedigreeTable.write(RandomPedigree.recorded(seed, 12));
        for (String line : written.lines().toList()) {
            for (String cell : line.split(",", -1)) {
                String plain = cell.startsWith("\"") && cell.length() > 1 ? cell.substring(1) : cell;
                assertFalse(plain.matches("[=+\\-@].*"), () -> cell + " in " + line);
            }
        }
    }

    @Test
    void every_damaged_table_ends_in_a_value_or_in_problems(TestReporter reporter) {
        Set<String> outcomes = new TreeSet<>();
        String[] pieces = {
            ",",
            "\"",
            "\n",
            "\r",
            ";",
            "'",
            "=",
            "-",
            "9999999999",
            "2020-02-30",
            " | ",
            "hob",
            "male",
            "id",
            "1/0",
            "\u0000",
            "\uFEFF",
            "0.5",
            "each kit",
            "",
            "x-",
            "\t",
            "at least one",
            "0"
        };
        for (int seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            Pedigree sample = RandomPedigree.recorded(seed % 40, 9);
            byte[] bytes = (seed % 3 == 0 ? PedigreeTable.writeCounted(sample) : PedigreeTable.write(sample))
                    .getBytes(StandardCharsets.UTF_8);
            String text = new String(bytes, StandardCharsets.UTF_8);
            for (int change = 1 + random.nextInt(3); change > 0; change--) {
                int from = random.nextInt(text.length());
                int to = Math.min(text.length(), from + random.nextInt(6));
                text = text.substring(0, from) + pieces[random.nextInt(pieces.length)] + text.substring(to);
            }
            bytes = text.getBytes(StandardCharsets.UTF_8);
            if (seed % 4 == 0) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            String[] lines = new String(bytes, StandardCharsets.UTF_8).split("\r\n|\r|\n", -1);
            try {
                Pedigree read = TABLE.read(bytes);
                assertEquals(read, TABLE.read(PedigreeTable.write(read)), "seed " + seed);
                outcomes.add("value");
            } catch (ProblemsException e) {
                for (Problem problem : e.problems()) {
                    outcomes.add(problem.code());
                    assertTrue(problem.position().isPresent(), problem::toString);
                    assertTrue(problem.position().get().line() <= lines.length, problem::toString);
                }
            }
        }
        reporter.publishEntry("outcomes", outcomes.toString());
        assertTrue(outcomes.size() >= 20, outcomes::toString);
    }
}
