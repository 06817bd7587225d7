package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.RandomPedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

class PedigreeFilesTest {

    private static final int TREES = 1_500;
    private static final int BYTES = 500;

    private static Pedigree read(String text) {
        return Documents.reader().readPedigree(Source.of("pedigree", text));
    }

    @Test
    void the_sample_is_read_whole() {
        Pedigree sample = read(Samples.text(DocumentKind.PEDIGREE));
        assertEquals(7, sample.individuals().size());
        assertEquals(Fertility.NEUTERED, sample.individual("jill 1").fertility());
        Paternity.Candidates sires =
                (Paternity.Candidates) sample.litters().get("spring").sires();
        assertEquals(Probability.of(1, 4), sires.candidates().get(1).share());
        assertEquals(
                Optional.of(LocalDate.of(2021, 5, 11)), sample.bornOf("kit 2"), "its own date, not that of its litter");
        assertEquals(Optional.empty(), sample.bornOf("kit 3"));
        assertEquals(
                new Ascertainment.Probands(
                        new Sighting(LifeStage.atWeek(9).in("autumn"), Phenotype.of("hue", "silver")).in("dawn"),
                        Probability.of(1, 2),
                        OptionalInt.of(2)),
                sample.litters().get("spring").ascertainment());
        assertEquals(Ascertainment.unknown(), sample.litters().get("autumn").ascertainment(), "not stated");
        assertEquals(2, sample.corrections().size());
        assertEquals(Fertility.UNKNOWN, sample.original().individual("jill 1").fertility());
        assertEquals(1, sample.original().litters().size());
    }

    @Test
    void what_was_written_reads_back() {
        Pedigree sample = read(Samples.text(DocumentKind.PEDIGREE));
        String written = Documents.write(sample);
        assertEquals(sample, read(written));
        assertEquals(sample.reference(), read(written).reference());
        assertEquals(written, Documents.write(read(written)));
    }

    @Property(tries = 200)
    void any_pedigree_reads_back_as_it_was_written(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.recorded(seed, 12);
        String written = Documents.write(pedigree);
        Pedigree read = read(written);
        assertEquals(pedigree, read);
        assertEquals(written, Documents.write(read));
        assertEquals(pedigree.order(), read.order());
        Statistics.label("litters")
                .collect(pedigree.litters().size() > 1)
                .coverage(c -> c.check(true).percentage(p -> p > 70));
        Statistics.label("ascertainment")
                .collect(pedigree.litters().values().stream()
                        .anyMatch(litter -> !litter.ascertainment().equals(Ascertainment.unknown())))
                .coverage(c -> c.check(true).percentage(p -> p > 60));
    }

    @Test
    void what_a_model_does_not_know_has_its_place_in_the_text() {
        Model model = Samples.model();
        Source source = Source.of("pedigree", Samples.text(DocumentKind.PEDIGREE));
        ProblemsException thrown =
                assertThrows(ProblemsException.class, () -> Documents.reader().readPedigree(source, model));
        for (Problem problem : thrown.problems()) {
            assertEquals(Stage.REFERENCES, problem.stage());
            assertTrue(problem.position().orElseThrow().line() > 5, problem::toString);
        }
        assertTrue(
                thrown.problems().stream().anyMatch(problem -> problem.code().equals("unknown-population")),
                thrown::getMessage);
    }

    @Test
    void every_damaged_pedigree_ends_in_a_value_or_in_problems(TestReporter reporter) throws IOException {
        String sample = Samples.text(DocumentKind.PEDIGREE);
        Map<String, Integer> outcomes = new TreeMap<>();
        for (int seed = 0; seed < TREES + BYTES; seed++) {
            Mutations mutations = new Mutations(seed);
            byte[] damaged = seed < TREES
                    ? Documents.write(mutations.tree(Tokeniser.read(Source.of("sample", sample), Limits.standard())
                                    .node()))
                            .getBytes(StandardCharsets.UTF_8)
                    : mutations.bytes(sample.getBytes(StandardCharsets.UTF_8));
            try {
                Pedigree read = Documents.reader().readPedigree(Source.of("seed " + seed, damaged));
                assertEquals(read, read(Documents.write(read)), "seed " + seed);
                outcomes.merge("value", 1, Integer::sum);
            } catch (ProblemsException e) {
                for (Problem problem : e.problems()) {
                    assertTrue(problem.position().isPresent(), problem::toString);
                    outcomes.merge(problem.code(), 1, Integer::sum);
                }
            }
        }
        reporter.publishEntry("outcomes", outcomes.toString());
        assertTrue(outcomes.size() >= 25, outcomes::toString);
    }
}
