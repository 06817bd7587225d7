package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.answer.recorded.LookNext.OfExpression;
import org.geneticsrules.answer.recorded.LookNext.OfState;
import org.geneticsrules.answer.recorded.LookNext.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.answer.recorded.LookNext.Word;
import org.geneticsrules.answer.recorded.LookNextQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

/** A white ferret that may be an albino, a dark-eyed white or a whitened silver, and what to look at next. */
class LookNextTest {

    private static final LifeStage GROWN = new LifeStage(OptionalInt.of(60), OptionalInt.of(1), Optional.empty());
    private static final Phenotype WHITE = Phenotype.of("white guard hairs", "all");

    private static RecordedAnswer ask(LifeStage stage, Set<String> traits, Phenotype... seen) {
        Individual stray = Individual.of("a stray");
        for (Phenotype look : seen) {
            stray = stray.with(Observation.of(GROWN, look));
        }
        return ask(stray, stage, traits);
    }

    private static RecordedAnswer ask(Individual stray, LifeStage stage, Set<String> traits) {
        Pedigree alone = Pedigree.builder("stray", "1").add(stray).build();
        return RecordedAnswers.of(Answers.of(Ferret.compiled(), List.of(Ferret.cautions())), alone)
                .from("few carriers")
                .lookNext(LookNextQuestion.of("a stray").at(stage).among(traits));
    }

    private static LookNext found(RecordedAnswer answer) {
        return (LookNext) answer.finding();
    }

    private static OfTrait row(LookNext found, String trait) {
        return found.traits().stream()
                .filter(one -> one.trait().equals(trait))
                .findFirst()
                .orElseThrow();
    }

    private static double bits(OfTrait row) {
        return row.tells().get(0).bits().orElseThrow();
    }

    /** A share times the logarithm of how seldom it is. */
    private static double part(double share) {
        return -share * Math.log(share) / Math.log(2);
    }

    /**
     * Calculated by hand. Of founders with frequencies c = 1/25, ce = 1/100 and m = 1/25 a coat all white after the first moult is
     *
     * <pre>
     *   albino        c^2                          = 0.0016
     *   near-white    ce^2 + 2 ce c                = 0.0009
     *   whitened      m^2 (1 - 0.0025) x 1/2       = 0.000798   (half of m/m are all white; silver by one dose is not, so soon)
     * </pre>
     *
     * <p>The eye is pink in the first and dark in the others, for certain: what it tells is the entropy of 0.0016 : 0.001698.
     */
    @Test
    void the_eye_tells_an_albino_from_the_other_whites() {
        RecordedAnswer answer = ask(GROWN, Set.of(), WHITE);
        LookNext found = found(answer);
        double albino = 0.0016;
        double others = 0.0009 + 0.0016 * (1 - 0.0025) / 2;
        double pink = albino / (albino + others);
        OfTrait eye = row(found, "eye colour");
        assertEquals(Word.TELLS, eye.word());
        assertEquals(part(pink) + part(1 - pink), bits(eye), 1e-9);
        Map<String, OfState> states =
                Map.of("pink", eye.states().get(1), "dark", eye.states().get(0));
        assertEquals("pink", eye.states().get(1).state());
        assertEquals(pink, states.get("pink").chances().get(0).value().orElseThrow(), 1e-9);
        assertEquals(List.of("albino"), states.get("pink").leaves().get("C"));
        assertFalse(states.get("dark").leaves().get("C").contains("albino"));
        // what a white coat hides tells nothing, whatever it reads
        for (String hidden : List.of("hue", "trunk depth", "throat", "head white", "belly")) {
            assertEquals(Word.TELLS_NOTHING, row(found, hidden).word(), hidden);
        }
        assertEquals(Word.STAGE_NEEDED, row(found, "mask").word());
        assertEquals(Word.RECORDED, row(found, "white guard hairs").word());
        assertTrue(eye.note().orElseThrow().contains("daylight"), "the catalogue says in what light to look");
        assertTrue(answer.verdict().startsWith("Look at "), answer.verdict());
    }

    @Test
    void a_pink_eye_settles_it_and_looks_are_at_an_end() {
        RecordedAnswer answer =
                ask(GROWN, Set.of("eye colour", "dilution", "hue"), WHITE, Phenotype.of("eye colour", "pink"));
        LookNext found = found(answer);
        assertTrue(found.traits().stream().noneMatch(one -> one.word() == Word.TELLS), found.toString());
        assertEquals(List.of("albino"), left(found, "C"));
        assertTrue(answer.verdict().contains("cannot tell further"), answer.verdict());
        assertTrue(answer.verdict().contains("records of relatives"), answer.verdict());
    }

    @Test
    void a_dark_eye_leaves_two_whites_that_no_look_tells_apart() {
        RecordedAnswer answer =
                ask(GROWN, Set.of("dilution", "pattern visible", "hue"), WHITE, Phenotype.of("eye colour", "dark"));
        LookNext found = found(answer);
        assertFalse(left(found, "C").contains("albino"));
        assertTrue(left(found, "C").contains("near-white"));
        assertTrue(left(found, "M").contains("whitened"));
        assertTrue(answer.verdict().contains("cannot tell further"), answer.verdict());
        assertTrue(answer.verdict().contains("DNA test at C"), answer.verdict());
    }

    /** The history of white: a stage that is past asks what an old record or photograph would tell. */
    @Test
    void a_record_of_an_earlier_moult_tells_an_old_silver_from_a_coat_that_never_had_colour() {
        LifeStage old = new LifeStage(OptionalInt.of(300), OptionalInt.of(6), Optional.empty());
        Individual stray = Individual.of("a stray")
                .with(Observation.of(old, Phenotype.from(Map.of("white guard hairs", "all", "eye colour", "dark"))));
        LifeStage young = new LifeStage(OptionalInt.of(8), OptionalInt.of(0), Optional.empty());
        LookNext found = found(ask(stray, young, Set.of("hue", "eye colour")));
        OfTrait hue = row(found, "hue");
        assertEquals(List.of(hue), found.best());
        OfState black = hue.states().get(0);
        assertEquals("black", black.state());
        assertFalse(black.leaves().get("C").contains("near-white"));
        assertEquals(List.of("silver"), black.leaves().get("M"));
        assertEquals(Word.TELLS_NOTHING, row(found, "eye colour").word());
    }

    @Test
    void what_cannot_be_told_yet_is_listed_with_when_to_look_again() {
        LookNext found = found(ask(LifeStage.atWeek(1), Set.of()));
        OfTrait hue = row(found, "hue");
        assertEquals(Word.NOT_YET, hue.word());
        assertEquals("from week 3 on, in daylight", hue.when().orElseThrow());
        assertEquals(Word.TELLS, row(found, "eye colour").word());
    }

    /** Calculated by hand: of an animal of which nothing is known the eye tells the entropy of c^2. */
    @Test
    void of_an_unknown_animal_the_eye_tells_the_entropy_of_its_share() {
        double pink = 0.04 * 0.04;
        assertEquals(
                part(pink) + part(1 - pink),
                bits(row(found(ask(LifeStage.atWeek(1), Set.of("eye colour"))), "eye colour")),
                1e-9);
    }

    private static List<String> left(LookNext found, String locus) {
        return found.classes().stream()
                .filter(at -> at.locus().equals(locus))
                .flatMap(at -> at.expressions().stream())
                .filter(one -> one.whether() == Whether.POSSIBLE)
                .map(OfExpression::expression)
                .toList();
    }
}
