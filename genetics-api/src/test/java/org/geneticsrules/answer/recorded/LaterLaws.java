package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.LifeStage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What animals may show at a stage, against the list of every way in which a pedigree and a look then may have come about: a state is as
 * likely as the list says, and possible if any way of the list leads to it with frequencies, mutation and naming errors left out.
 */
@Once
class LaterLaws {

    private static final double CLOSE = 1e-9;
    private static final int MOST = 10_000;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 25)
    void states_are_what_the_list_says(@ForAll("pedigrees") RandomPedigree random) {
        states(random);
    }

    /** What random pedigrees seldom reach was looked for. */
    @ParameterizedTest
    @CsvSource({
        "POSSIBLE without a chance, 44",
        "a course not seen before, 6",
        "a course seen before, 31",
        "hidden, 8",
        "misnamed, 42",
        "no claim, 4",
        "of unknown sex, 44",
        "only by mutation, 247",
        "shows, 3",
        "with parents, 11"
    })
    void rare_states_are_what_the_list_says(String kind, long seed) {
        Set<String> met = states(RandomPedigrees.pedigree(seed));
        assertTrue(met.contains(kind), met.toString());
    }

    /** Compares, and tells which kinds of states were met. */
    static Set<String> states(RandomPedigree random) {
        Set<String> met = new TreeSet<>();
        Kindred all = RecordedKindred.scored(random.kindred());
        boolean named = random.seed() % 3 == 0;
        Kindred kindred = named ? all : all.withoutConfusions();
        Model model = random.model();
        Optional<Worlds> now = Worlds.within(random.genome(), kindred, MOST);
        if (now.isEmpty() || now.get().size() == 0) {
            return met;
        }
        RecordedAnswers asked = RecordedAnswers.of(
                        Answers.of(CompiledModel.of(model), List.of()), RecordedKindred.pedigree(model, kindred))
                .with(RecordedKindred.confusions(kindred));
        // early, as the list has every way to come to that age
        LifeStage stage = new LifeStage(
                OptionalInt.of(2),
                OptionalInt.of(2),
                model.catalogue().seasons().stream().findFirst());
        for (Kindred.Member member : kindred.members().stream().limit(3).toList()) {
            Later found =
                    (Later) asked.later(LaterQuestion.of(member.id(), stage)).finding();
            if (found.traits().isEmpty()) {
                met.add("only by mutation");
            }
            for (OfTrait row : found.traits()) {
                if (row.word() != Word.NOT_YET && row.word() != Word.STAGE_NEEDED) {
                    compare(random, kindred, now.get(), member, row, stage, met);
                }
            }
        }
        return met;
    }

    private static void compare(
            RandomPedigree random,
            Kindred kindred,
            Worlds now,
            Kindred.Member member,
            OfTrait row,
            LifeStage stage,
            Set<String> met) {
        double sum = 0;
        Map<String, Double> chances = new LinkedHashMap<>();
        for (String state : random.model().states(row.trait())) {
            Optional<Worlds> listed = Worlds.within(random.genome(), seen(kindred, member, row, state, stage), MOST);
            if (listed.isEmpty()) {
                return;
            }
            Worlds then = listed.get();
            double chance = then.size() == 0
                    ? 0
                    : then.likelihood().toDouble() / now.likelihood().toDouble();
            chances.put(state, chance);
            sum += chance;
        }
        if (sum > 1 + CLOSE) {
            assertEquals(Word.NO_CLAIM, row.word(), random + " " + row);
        }
        if (row.word() == Word.NO_CLAIM) {
            assertTrue(sum > 1 + CLOSE || chances.size() == 1, random + " " + row);
            met.add("no claim");
            return;
        }
        // what fits only if some other allele has changed is told of the loci that the trait reads
        boolean fits = kindred.confusions().isEmpty()
                && Worlds.any(random.genome(), kindred, MOST).orElse(false);
        for (OfState one : row.states()) {
            double expected = chances.get(one.state());
            assertEquals(expected, one.chances().get(0).value().orElseThrow(), CLOSE, random + " " + row + one);
            if (fits) {
                Optional<Boolean> possible =
                        Worlds.any(random.genome(), seen(kindred, member, row, one.state(), stage), MOST);
                possible.ifPresent(any ->
                        assertEquals(any ? Whether.POSSIBLE : Whether.EXCLUDED, one.whether(), random + " " + one));
                met.add(one.whether() + (expected > 0 ? "" : " without a chance"));
            } else if (!kindred.confusions().isEmpty()) {
                met.add("misnamed");
            }
        }
        kinds(random.model(), kindred, member, row, met);
    }

    private static void kinds(Model model, Kindred kindred, Kindred.Member member, OfTrait row, Set<String> met) {
        boolean open = row.word() == Word.MAY_SHOW;
        met.add(row.word().word());
        boolean seen =
                member.sightings().stream().anyMatch(one -> one.looks().get(0).containsKey(row.trait()));
        for (Case one : model.rules().get(row.trait()).allCases()) {
            if (open && one.gives() instanceof CaseState.Progression) {
                met.add(seen ? "a course seen before" : "a course not seen before");
            }
        }
        if (row.states().stream().anyMatch(one -> !one.hiddenBy().isEmpty())) {
            met.add("hidden");
        }
        if (open && kindred.litterOf(member.id()).isPresent()) {
            met.add("with parents");
        }
        if (open && member.sex().isEmpty() && model.distinguishesSex()) {
            met.add("of unknown sex");
        }
    }

    private static Kindred seen(Kindred kindred, Kindred.Member member, OfTrait row, String state, LifeStage stage) {
        Map<String, String> when = new LinkedHashMap<>();
        stage.weeks().ifPresent(weeks -> when.put("week", Integer.toString(weeks)));
        stage.moult().ifPresent(moult -> when.put("moult", Integer.toString(moult)));
        stage.season().ifPresent(season -> when.put("season", season));
        List<Kindred.Sighting> sightings = new ArrayList<>(member.sightings());
        sightings.add(new Kindred.Sighting(when, List.of(Map.of(row.trait(), state))));
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member one : kindred.members()) {
            members.add(
                    one.id().equals(member.id())
                            ? new Kindred.Member(one.id(), one.sex(), one.population(), sightings, one.tests())
                            : one);
        }
        return new Kindred(members, kindred.litters(), kindred.confusions());
    }
}
