package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.Registry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code review}, and what the reports on all shipped models say. */
class ReviewTest {

    private static final List<Model> MODELS = Registry.discover().models();

    /**
     * What is bound to one sex in textbooks, from memory of what is published: tortoiseshell cats (Little C. C. 1912, Science
     * 35:784-785), cock-feathering (Morgan T. H. 1919, Carnegie Institution of Washington Publication 285), the spot of the guppy's
     * fin (Schmidt J. 1920, Comptes-rendus des travaux du Laboratoire Carlsberg 14, no. 8).
     */
    private static final Map<String, List<String>> ONE_SEX = Map.of(
            "geneticsrules.textbook.cat-orange", List.of("coat tortoiseshell female"),
            "geneticsrules.textbook.fowl-barred-and-hen-feathered", List.of("feathering cock-feathered male"),
            "geneticsrules.textbook.guppy-fin-spot", List.of("fin spot spotted male"));

    @Test
    void states_of_one_sex_are_those_of_the_textbooks() {
        Map<String, List<String>> found = new LinkedHashMap<>();
        for (Model model : MODELS) {
            List<String> bound = new ArrayList<>();
            Completeness.of(model)
                    .limited()
                    .forEach(one ->
                            one.sex().ifPresent(sex -> bound.add(one.trait() + " " + one.state() + " " + sex.word())));
            if (!bound.isEmpty()) {
                found.put(model.id(), bound);
            }
        }
        assertEquals(ONE_SEX, found);
    }

    /** No shipped model has a rule that never applies, a locus without effect or alleles that do the same. */
    @Test
    void shipped_models_have_no_idle_parts() {
        for (Model model : MODELS) {
            Completeness report = Completeness.of(model);
            assertEquals(List.of(), report.conflicts());
            assertEquals(
                    List.of(),
                    report.unreached().stream()
                            .filter(one -> one.part() != Completeness.Part.STATE)
                            .toList(),
                    model::toString);
            assertEquals(List.of(), report.idle(), model::toString);
            assertEquals(List.of(), report.alikeAlleles(), model::toString);
            assertEquals(
                    model.statements().size(),
                    report.withoutEvidence().size()
                            + report.graded().values().stream()
                                    .mapToInt(List::size)
                                    .sum());
        }
    }

    @Test
    void the_ferret_model_is_reviewed_by_default() {
        Run run = Run.of("review");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().startsWith("How complete is geneticsrules.ferret.common-practice "), run.out());
        assertTrue(run.out().contains("None: no two statements contradict each other."), run.out());
        assertTrue(run.out().contains("- genotypes of locus C: C/C, C/cl, C/cs, C/ce, C/c | "), run.out());
    }

    @Test
    void a_report_is_a_document_too() {
        Run run = Run.of("review", "--model", "geneticsrules.textbook.cat-orange", "--format", "json");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertTrue(run.out().contains("\"kind\": \"completeness\""), run.out());
        assertTrue(run.out().contains("\"state\": \"tortoiseshell\", \"sex\": \"female\""), run.out());
    }

    @Test
    void a_file_that_contradicts_itself_is_reviewed_and_one_with_other_faults_is_not(@TempDir Path folder)
            throws IOException {
        String pea = Run.of("model", "--model", "geneticsrules.textbook.pea", "--format", "json")
                .out();
        Path file = folder.resolve("torn.json");
        Files.writeString(file, pea.replace("{\"R\": [\"wrinkled\"]}", "{\"R\": [\"round\"]}"));
        Run run = Run.of("review", "--file", file.toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.err());
        assertTrue(run.out().contains("[overlapping-cases]"), run.out());
        assertTrue(run.out().contains("What no animal reaches"), run.out());
        Files.writeString(file, pea.replace("{\"R\": [\"wrinkled\"]}", "{\"R\": [\"wrinkle\"]}"));
        Run faulty = Run.of("review", "--file", file.toString());
        assertEquals(ExitCodes.NOT_UNDERSTOOD, faulty.code());
        assertEquals("", faulty.out());
        assertTrue(faulty.err().contains("did you mean \"wrinkled\"?"), faulty.err());
    }
}
