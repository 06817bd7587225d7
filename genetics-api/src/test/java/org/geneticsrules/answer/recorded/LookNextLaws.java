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
import org.geneticsrules.answer.recorded.LookNext.OfState;
import org.geneticsrules.answer.recorded.LookNext.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Word;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
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
 * What looks tell, against the list of every way in which a pedigree and a look may have come about: of what is carried and what is seen
 * together the list gives each chance p(s, g), and the information is the sum of p(s, g) log2 (p(s, g) / (p(s) p(g))).
 */
@Once
class LookNextLaws {

    private static final double CLOSE = 1e-9;
    private static final int MOST = 10_000;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 25)
    void looks_tell_what_the_list_says(@ForAll("pedigrees") RandomPedigree random) {
        looks(random);
    }

    /** What random pedigrees seldom reach was looked for. */
    @ParameterizedTest
    @CsvSource({
        "with parents, 163",
        "by chance, 175",
        "a chance seen before, 187",
        "masked, 183",
        "of unknown sex, 383",
        "no claim, 467",
        "shares a draw with another trait, 633",
        "shares a draw with another trait, 949",
        "shares a draw with another trait, 951",
        "shares a draw with another trait, 955"
    })
    void rare_looks_tell_what_the_list_says(String kind, long seed) {
        Set<String> met = looks(RandomPedigrees.pedigree(seed));
        assertTrue(met.contains(kind), met.toString());
    }

    /** Compares, and tells which kinds of looks were met. */
    private static Set<String> looks(RandomPedigree random) {
        Set<String> met = new TreeSet<>();
        Kindred all = RecordedKindred.scored(random.kindred());
        Kindred kindred = random.seed() % 2 == 0 ? all : once(all);
        Model model = random.model();
        Optional<Worlds> now = Worlds.within(random.genome(), kindred, MOST);
        if (now.isEmpty() || now.get().size() == 0) {
            return met;
        }
        CompiledModel compiled = CompiledModel.of(model);
        RecordedAnswers asked = RecordedAnswers.of(
                        Answers.of(compiled, List.of()), RecordedKindred.pedigree(model, kindred))
                .with(RecordedKindred.confusions(kindred));
        // early, as the list has every way to come to that age
        LifeStage stage = new LifeStage(
                OptionalInt.of(2),
                OptionalInt.of(2),
                model.catalogue().seasons().stream().findFirst());
        for (Kindred.Member member : kindred.members().stream().limit(3).toList()) {
            LookNext found = (LookNext)
                    asked.lookNext(LookNextQuestion.of(member.id()).at(stage)).finding();
            for (OfTrait row : found.traits()) {
                if (row.word() != Word.NOT_YET && row.word() != Word.RECORDED && row.word() != Word.STAGE_NEEDED) {
                    compare(random, kindred, now.get(), member, row, stage, met);
                    kinds(asked, compiled, member, row, met);
                }
            }
        }
        return met;
    }

    /** Animals that were looked at once and not tested, so that more looks tell something. */
    private static Kindred once(Kindred kindred) {
        return new Kindred(
                kindred.members().stream()
                        .map(one -> new Kindred.Member(
                                one.id(),
                                one.sex(),
                                one.population(),
                                one.sightings().stream().limit(1).toList(),
                                List.of()))
                        .toList(),
                kindred.litters(),
                kindred.confusions());
    }

    private static void compare(
            RandomPedigree random,
            Kindred kindred,
            Worlds now,
            Kindred.Member member,
            OfTrait row,
            LifeStage stage,
            Set<String> met) {
        Map<Map<String, String>, Probability> carried = now.genotypes(member.id());
        double sum = 0;
        double entropy = 0;
        double bits = 0;
        for (String state : random.model().states(row.trait())) {
            Optional<Worlds> listed = Worlds.within(random.genome(), seen(kindred, member, row, state, stage), MOST);
            if (listed.isEmpty()) {
                return;
            }
            Worlds then = listed.get();
            double chance = then.size() == 0
                    ? 0
                    : then.likelihood().toDouble() / now.likelihood().toDouble();
            sum += chance;
            if (row.word() != Word.NO_CLAIM) {
                assertEquals(chance, told(row, state), CLOSE, random + " " + row);
            }
            if (chance > 0) {
                entropy -= chance * log2(chance);
                for (Map.Entry<Map<String, String>, Probability> one :
                        then.genotypes(member.id()).entrySet()) {
                    double both = chance * one.getValue().toDouble();
                    double alone = chance * carried.get(one.getKey()).toDouble();
                    bits += both * log2(both / alone);
                }
            }
        }
        assertEquals(sum > 1 + CLOSE, row.word() == Word.NO_CLAIM, random + " " + row);
        if (row.word() == Word.NO_CLAIM) {
            met.add("no claim");
            return;
        }
        double told = row.tells().get(0).bits().orElseThrow();
        assertEquals(bits, told, CLOSE, random + " " + row);
        assertTrue(told >= 0, "information is never negative");
        assertTrue(told <= entropy + CLOSE, "nor more than what is open about the look");
        if (entropy < CLOSE) {
            assertEquals(Word.TELLS_NOTHING, row.word(), "what is known already tells nothing");
        }
        met.add(row.word().word());
        if (told > 1e-6 && told < entropy - 1e-6) {
            met.add("by chance");
            boolean before = member.sightings().stream()
                    .anyMatch(seen -> seen.looks().get(0).containsKey(row.trait()));
            met.add(before ? "a chance seen before" : "a chance not seen before");
        }
    }

    /** What a row of several kinds says of itself. */
    private static void kinds(
            RecordedAnswers asked, CompiledModel compiled, Kindred.Member member, OfTrait row, Set<String> met) {
        if (row.word() != Word.TELLS) {
            return;
        }
        LookLoci loci = new LookLoci(compiled, asked.pedigree().individual(member.id()));
        if (loci.sharing(row.trait()).size() > 1) {
            met.add("shares a draw with another trait");
        }
        for (Mask mask : compiled.model().masks().values()) {
            if (mask.covers().containsKey(row.trait())) {
                met.add("masked");
            }
        }
        if (member.sex().isEmpty() && compiled.model().distinguishesSex()) {
            met.add("of unknown sex");
        }
        if (!asked.pedigree().parentsOf(member.id()).isEmpty()) {
            met.add("with parents");
        }
    }

    private static double told(OfTrait row, String state) {
        return row.states().stream()
                .filter(one -> one.state().equals(state))
                .map(OfState::chances)
                .mapToDouble(chances -> chances.get(0).value().orElseThrow())
                .sum();
    }

    private static double log2(double number) {
        return Math.log(number) / Math.log(2);
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
