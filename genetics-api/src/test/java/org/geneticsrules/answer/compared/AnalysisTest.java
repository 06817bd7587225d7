package org.geneticsrules.answer.compared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.LitterDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.junit.jupiter.api.Test;

/** A question with all that its answer hangs on. */
class AnalysisTest {

    private static final Pedigree LITTER = Coats.ofCarriers(9, 3);

    private static final Confusions MISNAMED =
            Confusions.of(List.of(new Confusion("coat", "dark", "light", Optional.empty(), Probability.of(1, 50))));

    private static HeldModel held(Model model) {
        return HeldModel.of(model);
    }

    private static String text(LitterAnswer answer) {
        return Canonical.text(LitterDocument.of(answer));
    }

    /** The services that it goes through, asked by hand. */
    private static LitterAnswers litters(RivalModel... rivals) {
        Answers answers =
                Answers.of(CompiledModel.of(Coats.recessive()), List.of()).against(List.of(rivals));
        return LitterAnswers.of(
                        RecordedAnswers.of(answers, LITTER).with(MISNAMED).from("even"))
                .about(List.of("coat"))
                .drawing(500, 3);
    }

    @Test
    void it_asks_what_the_services_are_asked_by_hand() {
        Analysis.Settings settings = new Analysis.Settings(Optional.of("even"), List.of("coat"), MISNAMED, 500, 3);
        Model lethal = Coats.lethal();
        assertEquals(
                text(litters().fit()),
                text(Analysis.of(Analysis.Kind.FIT, held(Coats.recessive()), LITTER)
                        .asked(settings)
                        .run()));
        assertEquals(
                text(litters().favour(List.of(Candidate.of(lethal)))),
                text(Analysis.of(Analysis.Kind.NAMED, held(Coats.recessive()), LITTER, held(lethal))
                        .asked(settings)
                        .run()));
        assertEquals(
                text(litters(RivalModel.of("lethal", () -> lethal)).favour()),
                text(Analysis.of(Analysis.Kind.AT_HAND, held(Coats.recessive()), LITTER, held(lethal))
                        .asked(settings)
                        .run()));
    }

    @Test
    void what_cannot_be_asked_is_refused() {
        HeldModel one = held(Coats.recessive());
        assertThrows(IllegalArgumentException.class, () -> Analysis.of(Analysis.Kind.FIT, one, LITTER, one));
        assertThrows(IllegalArgumentException.class, () -> Analysis.of(Analysis.Kind.NAMED, one, LITTER));
        Analysis fit = Analysis.of(Analysis.Kind.FIT, one, LITTER);
        IllegalArgumentException population = assertThrows(
                IllegalArgumentException.class, () -> fit.asked(fit.settings().from("evn")));
        assertTrue(String.valueOf(population.getMessage()).contains("expected one of [even]"), population::toString);
        assertThrows(
                IllegalArgumentException.class,
                () -> new Analysis.Settings(Optional.empty(), List.of(), Confusions.none(), 98, 1));
        assertThrows(IllegalArgumentException.class, () -> HeldModel.of(Coats.recessive(), List.of(), Coats.lethal()));
    }

    /** Two versions of one model may both be asked; each document is held once, by its hash. */
    @Test
    void each_document_is_held_once() {
        Model rarer = Coats.recessive("recessive", Probability.of(1, 3));
        Analysis analysis =
                Analysis.of(Analysis.Kind.NAMED, held(Coats.recessive()), LITTER, held(rarer), held(Coats.recessive()));
        Map<Reference, Node> documents = analysis.documents();
        assertEquals(
                List.of("coats", "recessive", "recessive", "carriers"),
                documents.keySet().stream().map(Reference::id).toList());
        documents.forEach(
                (reference, document) -> assertEquals(reference.sha256().orElseThrow(), Canonical.sha256(document)));
    }

    @Test
    void documents_of_two_analyses_go_together_by_kind_and_id() {
        Model rarer = Coats.recessive("recessive", Probability.of(1, 3));
        Analysis before = Analysis.of(Analysis.Kind.NAMED, held(Coats.recessive()), LITTER, held(Coats.dominant()));
        Analysis after = Analysis.of(Analysis.Kind.NAMED, held(rarer), LITTER, held(Coats.lethal()));
        List<DocumentChange> changes = DocumentChange.between(before, after);
        assertEquals(List.of(), DocumentChange.between(before, before));
        assertEquals(
                List.of("recessive", "dominant", "lethal"),
                changes.stream().map(DocumentChange::id).toList());
        assertEquals(2, changes.get(0).statements().all().size());
        assertEquals(Optional.empty(), changes.get(1).after());
        assertEquals(Optional.empty(), changes.get(2).before());
    }
}
