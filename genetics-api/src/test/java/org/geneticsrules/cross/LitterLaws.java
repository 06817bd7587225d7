package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Family;
import org.geneticsrules.cross.RandomMatings.Looking;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.testing.brute.Seen;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Litters in models of the whole language: the kits depend on one another through their parents, and through nothing else. */
@Once
class LitterLaws {

    private static final LitterSize SIZE = LitterSize.named("1 : 2 : 0 : 1", Distribution.ofWeights(sizes()));

    private static Map<Integer, Integer> sizes() {
        return new TreeMap<>(Map.of(0, 1, 1, 2, 3, 1));
    }

    /** Kits already seen, by the engine's words and by the reference's, and the parents that may have had them. */
    private record Litter(
            Family family, View view, List<Sighting> seen, Litters before, Litters left, List<Phenotype> looks) {

        static Optional<Litter> of(Family family, long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Looking looking = family.looking().among(random.nextBoolean() ? Census.BORN : Census.SCORED);
            if (family.isContradictory()) {
                return Optional.empty();
            }
            Litters before = family.litters(looking.view().census());
            List<Phenotype> looks = new ArrayList<>(looking.of(before).keySet());
            if (looks.isEmpty()) {
                return Optional.empty();
            }
            List<Sighting> seen = new ArrayList<>();
            List<Seen.Kit> plain = new ArrayList<>();
            for (int i = random.nextInt(3); i > 0; i--) {
                Phenotype look = looks.get(random.nextInt(looks.size()));
                seen.add(new Sighting(looking.view().stage(), look));
                plain.add(new Seen.Kit(sex(look), List.of(new Seen(looking.stage(), states(look)))));
            }
            return Optional.of(new Litter(family, looking.view(), seen, before, before.given(plain), looks));
        }

        Looking looking() {
            return family.looking();
        }

        UncertainCross cross() {
            return family.cross();
        }

        String kind() {
            Sires sires = cross().sires();
            return sires.males().size() == 1 ? "one male" : sires.perKit() ? "two males" : "one of two males";
        }

        @Override
        public String toString() {
            return family + " after " + seen;
        }
    }

    private static String sex(Phenotype look) {
        return look.state(Sex.VARIABLE).orElse("");
    }

    private static Map<String, String> states(Phenotype look) {
        Map<String, String> states = new LinkedHashMap<>(look.asMap());
        states.remove(Sex.VARIABLE);
        return states;
    }

    private static Optional<Litter> draw(long seed) {
        Family family = switch (Math.floorMod(seed, 4)) {
            case 0 -> Family.ofTwoMales(seed, false);
            case 1 -> Family.ofTwoMales(seed, true);
            default -> Family.draw(seed);
        };
        return Litter.of(family, seed);
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 50)
    void chances_of_the_next_kit_are_those_of_the_parents_left(@ForAll("seeds") long seed) {
        draw(seed).ifPresent(LitterLaws::nextKit);
    }

    /** Each kind of litter with each number of kits seen before; of some there is one in thirty random litters. */
    @ParameterizedTest
    @CsvSource({
        "one male, 0, 62",
        "one male, 1, 58",
        "one male, 2, 74",
        "one of two males, 0, 72",
        "one of two males, 1, 68",
        "one of two males, 2, 36",
        "two males, 0, 49",
        "two males, 1, 45",
        "two males, 2, 69"
    })
    void chances_of_the_next_kit_of_each_kind_of_litter(String kind, int seen, long seed) {
        Litter litter = draw(seed).orElseThrow();
        assertEquals(kind, litter.kind());
        assertEquals(seen, litter.seen().size());
        nextKit(litter);
    }

    @Property(tries = 20)
    void counts_are_those_of_going_through_every_litter(@ForAll("seeds") long seed) {
        draw(seed).ifPresent(LitterLaws::counts);
    }

    @Property(tries = 30)
    void sons_and_daughters_are_counted_like_looks(@ForAll("seeds") long seed) {
        draw(seed).ifPresent(LitterLaws::sonsAndDaughters);
    }

    @Property(tries = 15)
    void a_kit_that_nobody_looked_at_changes_nothing(@ForAll("seeds") long seed) {
        draw(seed).ifPresent(LitterLaws::unrecorded);
    }

    @Property(tries = 30)
    void a_kit_forgotten_is_the_mean_over_what_it_may_have_shown(@ForAll("seeds") long seed) {
        draw(seed).ifPresent(LitterLaws::forgotten);
    }

    static void nextKit(Litter litter) {
        for (Phenotype event :
                litter.looks().subList(0, Math.min(3, litter.looks().size()))) {
            Optional<Distribution<Probability>> chance = litter.cross().chance(litter.view(), event, litter.seen());
            if (litter.left().isEmpty()) {
                assertEquals(Optional.empty(), chance, litter::toString);
                assertEquals(Optional.empty(), litter.cross().next(litter.view(), event, litter.seen()));
            } else if (litter.looking().isFull(event)) {
                Distribution<Probability> expected = Distribution.of(
                        litter.left().chances(sex(event), litter.looking().stage(), states(event)));
                assertEquals(Optional.of(expected), chance, () -> litter + " next " + event);
                assertEquals(
                        Optional.of(mean(expected.asMap())),
                        litter.cross().next(litter.view(), event, litter.seen()),
                        () -> litter + " next " + event);
            }
        }
    }

    private static Probability mean(Map<Probability, Probability> chances) {
        Probability mean = Probability.ZERO;
        for (Map.Entry<Probability, Probability> one : chances.entrySet()) {
            mean = mean.plus(one.getKey().times(one.getValue()));
        }
        return mean;
    }

    static void counts(Litter litter) {
        Phenotype event = litter.looks().get(0);
        if (litter.left().isEmpty() || !litter.looking().isFull(event)) {
            return;
        }
        Map<Integer, Probability> expected = new TreeMap<>();
        Distribution.ofWeights(sizes())
                .asMap()
                .forEach((kits, share) -> litter.left()
                        .counts(kits, sex(event), litter.looking().stage(), states(event))
                        .forEach((count, chance) -> expected.merge(count, chance.times(share), Probability::plus)));
        Distribution<Integer> counts =
                litter.cross().count(litter.view(), event, SIZE, litter.seen()).orElseThrow();
        assertEquals(Distribution.of(expected), counts, litter::toString);

        // the chance of none, of all, and the expected number, from the chances of the parents
        Distribution<Probability> chances =
                litter.cross().chance(litter.view(), event, litter.seen()).orElseThrow();
        Distribution<Integer> three = litter.cross()
                .count(litter.view(), event, LitterSize.of(3), litter.seen())
                .orElseThrow();
        Probability none = Probability.ZERO;
        Probability all = Probability.ZERO;
        for (Map.Entry<Probability, Probability> one : chances.asMap().entrySet()) {
            none = none.plus(one.getKey().complement().pow(3).times(one.getValue()));
            all = all.plus(one.getKey().pow(3).times(one.getValue()));
        }
        assertEquals(none, three.probability(0), litter::toString);
        assertEquals(all, three.probability(3), litter::toString);
        // 3 times the mean chance, each side over 3
        Probability third = Probability.ZERO;
        for (Map.Entry<Integer, Probability> one : three.asMap().entrySet()) {
            third = third.plus(one.getValue().times(Probability.of(one.getKey(), 3)));
        }
        assertEquals(mean(chances.asMap()), third, litter::toString);
    }

    static void sonsAndDaughters(Litter litter) {
        if (litter.left().isEmpty()) {
            return;
        }
        View sexes = new View(
                List.of(Sex.VARIABLE), litter.view().stage(), litter.view().census());
        Map<Integer, Probability> sons = new TreeMap<>();
        Map<Integer, Probability> daughters = new TreeMap<>();
        for (Sex sex : Sex.values()) {
            Distribution<Integer> expected = Distribution.of(
                    litter.left().counts(3, sex.word(), litter.looking().stage(), Map.of()));
            Distribution<Integer> found = litter.cross()
                    .count(sexes, Phenotype.of(Sex.VARIABLE, sex.word()), LitterSize.of(3), litter.seen())
                    .orElseThrow();
            assertEquals(expected, found, () -> litter + " " + sex);
            (sex == Sex.MALE ? sons : daughters).putAll(found.asMap());
        }
        for (int count = 0; count <= 3; count++) {
            assertEquals(
                    sons.getOrDefault(count, Probability.ZERO), daughters.getOrDefault(3 - count, Probability.ZERO));
        }
        View looks = litter.looking().withoutSex().among(litter.view().census());
        Phenotype event = litter.looks().get(0);
        if (litter.looking().isFull(event)) {
            assertEquals(
                    Distribution.of(litter.left().counts(2, "", litter.looking().stage(), states(event))),
                    litter.cross()
                            .count(looks, Phenotype.from(states(event)), LitterSize.of(2), litter.seen())
                            .orElseThrow(),
                    litter::toString);
        }
    }

    static void unrecorded(Litter litter) {
        Phenotype event = litter.looks().get(0);
        List<Sighting> more = new ArrayList<>(litter.seen());
        more.add(more.size() / 2, new Sighting(litter.view().stage(), Phenotype.unspecified()));
        assertEquals(
                litter.cross().chance(litter.view(), event, litter.seen()),
                litter.cross().chance(litter.view(), event, more),
                litter::toString);
        assertEquals(
                litter.cross().possibleChances(litter.view(), event, litter.seen()),
                litter.cross().possibleChances(litter.view(), event, more),
                litter::toString);
    }

    /** P(y) = sum over x of P(x) P(y | x), in models that leave no trait open, where looks exclude one another. */
    static void forgotten(Litter litter) {
        List<Phenotype> full =
                litter.looks().stream().filter(litter.looking()::isFull).toList();
        if (litter.left().isEmpty() || full.size() < litter.looks().size() || full.size() > 6) {
            return;
        }
        Phenotype event = full.get(full.size() - 1);
        Probability sum = Probability.ZERO;
        for (Phenotype look : full) {
            Probability first =
                    litter.cross().next(litter.view(), look, litter.seen()).orElseThrow();
            if (!first.isZero()) {
                List<Sighting> more = new ArrayList<>(litter.seen());
                more.add(0, new Sighting(litter.view().stage(), look));
                sum = sum.plus(first.times(
                        litter.cross().next(litter.view(), event, more).orElseThrow()));
            }
        }
        assertEquals(litter.cross().next(litter.view(), event, litter.seen()).orElseThrow(), sum, litter::toString);
    }
}
