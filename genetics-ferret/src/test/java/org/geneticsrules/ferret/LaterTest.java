package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LaterQuestion;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a silver may show at a later moult. The chances of whitening are those of the default model, which calls them conjecture. */
@Tag("default-jdk")
class LaterTest {

    private static final String SILVER = "white guard hairs";

    private static Individual silver(Object... seen) {
        Individual one = Individual.of("Mist");
        for (int i = 0; i < seen.length; i += 2) {
            one = one.with(
                    Observation.of(LifeStage.atMoult((Integer) seen[i]), Phenotype.of(SILVER, (String) seen[i + 1])));
        }
        return one;
    }

    private static RecordedAnswers of(Answers answers, Individual one) {
        return RecordedAnswers.of(
                answers, Pedigree.builder("alone", "1").add(one).build());
    }

    private static RecordedAnswer ask(Individual one, LifeStage stage, String... traits) {
        return of(Answers.of(Ferret.compiled(), List.of(Ferret.cautions())), one)
                .later(LaterQuestion.of(one.id(), stage).in(List.of(traits)));
    }

    private static OfTrait row(RecordedAnswer answer, String trait) {
        return ((Later) answer.finding())
                .traits().stream()
                        .filter(one -> one.trait().equals(trait))
                        .findFirst()
                        .orElseThrow();
    }

    private static Map<String, String> chances(OfTrait row) {
        Map<String, String> chances = new LinkedHashMap<>();
        for (OfState one : row.left()) {
            Set<String> each = one.chances().stream().map(Chance::toString).collect(Collectors.toSet());
            assertEquals(1, each.size(), "a course of life hangs on no frequency");
            chances.put(one.state(), one.chances().get(0).toString().replaceFirst(" \\(.*", ""));
        }
        return chances;
    }

    /**
     * Calculated by hand. Seen scattered at moult 1, asked at moult 3, that is after two steps
     *
     * <pre>
     *   scattered       -> scattered 1/2, mostly coloured 1/2
     *   mostly coloured -> scattered 1/8, mostly coloured 3/8, about half 1/2
     *
     *   scattered       1/2 x 1/2 + 1/2 x 1/8 = 1/4 + 1/16 = 5/16
     *   mostly coloured 1/2 x 1/2 + 1/2 x 3/8 = 1/4 + 3/16 = 7/16
     *   about half                  1/2 x 1/2 = 1/4
     * </pre>
     */
    @Test
    void two_moults_after_scattered() {
        RecordedAnswer answer = ask(silver(1, "scattered"), LifeStage.atMoult(3), SILVER);
        OfTrait row = row(answer, SILVER);
        assertEquals(Map.of("scattered", "5/16", "mostly coloured", "7/16", "about half", "1/4"), chances(row));
        assertEquals(Word.MAY_SHOW, row.word());
        assertEquals(Whether.EXCLUDED, row.states().get(4).whether());
        assertEquals(
                "At moult 3, by all records, \"Mist\" may show white guard hairs from scattered to about half, most likely"
                        + " mostly coloured.",
                answer.verdict());
        assertEquals(Grade.CONJECTURE, answer.evidence().grade().orElseThrow());
        assertTrue(
                answer.assumptions().stream()
                        .anyMatch(one -> one.text().contains("From moult to moult, \"white guard hairs\" changes")
                                && one.text().contains("conjecture")),
                answer.assumptions().toString());
        assertTrue(
                answer.cautions().stream().anyMatch(one -> one.line().contains("early greying")),
                "white guard hairs then may be early greying");
    }

    /**
     * Calculated by hand. The record of moult 3 is where it starts from, and that of moult 1 adds nothing: two steps from mostly coloured.
     *
     * <pre>
     *   scattered       1/8 x 1/2 + 3/8 x 1/8                     =  7/64
     *   mostly coloured 1/8 x 1/2 + 3/8 x 3/8 + 1/2 x 1/8         = 17/64
     *   about half                  3/8 x 1/2 + 1/2 x 3/8         =  3/8
     *   mostly white                            1/2 x 1/2         =  1/4
     * </pre>
     */
    @Test
    void a_second_record_is_where_it_goes_on_from() {
        OfTrait row = row(ask(silver(1, "scattered", 3, "mostly coloured"), LifeStage.atMoult(5), SILVER), SILVER);
        assertEquals(
                Map.of("scattered", "7/64", "mostly coloured", "17/64", "about half", "3/8", "mostly white", "1/4"),
                chances(row));
        assertEquals(
                chances(row), chances(row(ask(silver(3, "mostly coloured"), LifeStage.atMoult(5), SILVER), SILVER)));
    }

    /** Under the rival it never goes back: from about half it can only stay or whiten. */
    @Test
    void a_rival_that_never_darkens_has_another_range() {
        Registry registry = Registry.of(List.of(new FerretProvider()));
        Answers answers = Answers.of(Ferret.compiled(), List.of(Ferret.cautions()))
                .against(registry.rivals(Ferret.compiled().model()));
        RecordedAnswer answer = of(answers, silver(3, "about half"))
                .later(LaterQuestion.of("Mist", LifeStage.atMoult(5)).in(Set.of(SILVER)));
        assertTrue(answer.verdict().contains("from scattered to nearly all"), answer.verdict());
        assertTrue(
                answer.rivalVerdicts().stream()
                        .anyMatch(one -> one.title().contains("only ever whitens")
                                && one.verdict().contains("from about half to nearly all")),
                answer.rivalVerdicts().toString());
    }

    /**
     * Nearly all white hides the hue. From scattered at moult 1 it takes four steps to get there, so at moult 4 the hue is still seen and at
     * moult 5 it may be hidden.
     */
    @Test
    void whitening_hides_the_hue_when_it_has_come_far_enough() {
        OfTrait before = row(ask(silver(1, "scattered"), LifeStage.parse("week 200, moult 4"), "hue"), "hue");
        assertEquals(Whether.EXCLUDED, before.states().get(3).whether());
        OfTrait after = row(ask(silver(1, "scattered"), LifeStage.parse("week 200, moult 5"), "hue"), "hue");
        OfState none = after.states().get(3);
        assertEquals("none seen", none.state());
        assertEquals(List.of("whitened"), none.hiddenBy());
        assertEquals(1.0 / 16, none.chances().get(0).value().orElseThrow(), 1e-12);
    }

    /** A face without a mask is found in any ferret; by what it may be hidden hangs on how far the coat can have whitened. */
    @Test
    void a_mask_is_told_only_where_the_records_allow_it() {
        OfState early = row(ask(silver(1, "scattered"), LifeStage.parse("moult 3, winter"), "mask"), "mask")
                .states()
                .get(4);
        assertEquals("none", early.state());
        assertEquals(List.of("white head"), early.hiddenBy());
        OfState late = row(ask(silver(1, "scattered"), LifeStage.parse("moult 5, winter"), "mask"), "mask")
                .states()
                .get(4);
        assertEquals(List.of("whitened", "white head"), late.hiddenBy());
        OfState any = row(ask(Individual.of("stray"), LifeStage.parse("moult 1, winter"), "mask"), "mask")
                .states()
                .get(4);
        assertEquals(List.of("albino", "near-white", "whitened", "white head"), any.hiddenBy());
    }

    @Test
    void an_albino_stays_one() {
        Individual albino =
                Individual.of("Frost").with(Observation.of(LifeStage.atWeek(8), Phenotype.of("eye colour", "pink")));
        RecordedAnswer answer = ask(albino, LifeStage.parse("week 300, moult 6"), "eye colour", "hue", SILVER);
        assertEquals(
                "At week 300, moult 6, by all records, \"Frost\" shows hue none seen, eye colour pink, white guard hairs"
                        + " all.",
                answer.verdict());
        assertEquals(List.of("albino"), row(answer, "hue").left().get(0).hiddenBy());
        assertTrue(
                answer.evidence().statements().stream()
                        .noneMatch(one -> one.pointer().contains("/silver")),
                "what an albino hides is no ground of the answer");
    }

    @Test
    void what_cannot_be_told_then_is_refused_with_when_to_look() {
        ProblemsException refused = assertThrows(
                ProblemsException.class,
                () -> ask(silver(1, "scattered"), LifeStage.atWeek(2), "hue", "mask", SILVER, "eye colour"));
        assertEquals(4, refused.problems().size(), refused.getMessage());
        assertTrue(refused.problems().stream().allMatch(one -> one.code().equals("stage-needed")));
        assertTrue(refused.getMessage().contains("a stage from week 3 on; look again then"), refused.getMessage());
        assertTrue(refused.getMessage().contains("season"), refused.getMessage());
        assertTrue(refused.getMessage().contains("moult"), refused.getMessage());
        RecordedAnswer all = ask(silver(1, "scattered"), LifeStage.atWeek(2));
        assertEquals(Word.NOT_YET, row(all, "hue").word());
        assertEquals("from week 3 on, in daylight", row(all, "hue").when().orElseThrow());
        assertEquals(Word.STAGE_NEEDED, row(all, "mask").word());
        assertEquals(Word.SHOWS, row(all, "eye colour").word());
        assertFalse(all.verdict().contains("hue"), all.verdict());
    }

    @Test
    void records_that_contradict_one_another_tell_nothing() {
        RecordedAnswer answer = ask(
                silver(1, "scattered").with(Observation.of(LifeStage.atWeek(9), Phenotype.of("eye colour", "pink"))),
                LifeStage.atMoult(3),
                SILVER);
        assertTrue(answer.verdict().contains("cannot all be true"), answer.verdict());
        assertEquals(1, answer.conflicts().size());
        assertTrue(((Later) answer.finding()).traits().isEmpty());
    }
}
