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
import org.geneticsrules.pedigree.Ascertainment;
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

    /** Models may be called alike, and otherwise than the answer calls them, as one with a patch is: each keeps what is believed of it. */
    @Test
    void what_is_believed_belongs_to_the_model_and_not_to_its_title() {
        HeldModel first = held(Coats.recessive()).called("mine").believed(Probability.of(1, 10));
        HeldModel other = held(Coats.lethal()).called("mine").believed(Probability.of(3, 10));
        for (Analysis.Kind kind : List.of(Analysis.Kind.NAMED, Analysis.Kind.AT_HAND)) {
            LitterAnswer answer = Analysis.of(kind, first, LITTER, other).run();
            List<Standings.Standing> models = answer.comparison().orElseThrow().models();
            assertEquals(0.25, models.get(0).prior(), 1e-12, kind.word());
            assertEquals(0.75, models.get(1).prior(), 1e-12, kind.word());
            double odds = 3 * Math.exp(models.get(1).log() - models.get(0).log());
            assertEquals(odds / (1 + odds), models.get(1).posterior(), 1e-12, kind.word());
        }
    }

    /** Two light parents have dark young where light is dominant, and none where it is recessive. */
    @Test
    void belief_in_none_but_an_excluded_model_is_told() {
        Pedigree litter = Coats.litter(
                        Pedigree.builder("light", "1")
                                .add(Coats.seen("sire", Coats.LIGHT))
                                .add(Coats.seen("dam", Coats.LIGHT)),
                        "first",
                        "",
                        1,
                        3,
                        Ascertainment.complete())
                .build();
        HeldModel dominant = held(Coats.dominant());
        HeldModel doubted = dominant.believed(Probability.ZERO);
        HeldModel excluded = held(Coats.recessive());
        LitterAnswer answer =
                Analysis.of(Analysis.Kind.NAMED, doubted, litter, excluded).run();
        assertTrue(answer.comparison().orElseThrow().models().get(1).isImpossible());
        String told = "none that was believed in beforehand";
        assertTrue(answer.notices().stream().anyMatch(one -> one.contains(told)), answer.notices()::toString);
        LitterAnswer open =
                Analysis.of(Analysis.Kind.NAMED, dominant, litter, excluded).run();
        assertTrue(open.notices().stream().noneMatch(one -> one.contains(told)), open.notices()::toString);
        HeldModel none = excluded.believed(Probability.ZERO);
        assertThrows(IllegalArgumentException.class, () -> Analysis.of(Analysis.Kind.AT_HAND, doubted, litter, none));
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
