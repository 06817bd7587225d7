package org.geneticsrules.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.RandomPedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

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
        Statistics.label("guarded")
                .collect(written.contains("'="))
                .coverage(c -> c.check(true).percentage(p -> p > 20));
        Statistics.label("candidates")
                .collect(pedigree.litters().values().stream()
                        .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates several
                                && several.candidates().size() > 1))
                .coverage(c -> c.check(true).percentage(p -> p > 20));
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
            "\t"
        };
        for (int seed = 0; seed < 2_000; seed++) {
            Random random = new Random(seed);
            byte[] bytes =
                    PedigreeTable.write(RandomPedigree.recorded(seed % 40, 9)).getBytes(StandardCharsets.UTF_8);
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
