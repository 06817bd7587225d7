package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The interpreter, the diagram and a life lived in every way agree about chance, sex, stages and viability. */
@Once
class WholeLanguageLaws {

    /** One animal of a random model, looked at once. */
    private record Case(
            Model model,
            CompiledModel compiled,
            Genome genome,
            Sex sex,
            Genotype genotype,
            LifeStage stage,
            long seed) {
        Animal animal() {
            return RandomAnimals.animals(genome, sex, genotype).get(0);
        }

        List<String> traits() {
            List<String> traits = new ArrayList<>(model.visibleTraits());
            traits.removeIf(trait -> new SplittableRandom(seed + trait.hashCode()).nextInt(3) == 0);
            return traits;
        }

        List<String> traitsAndSex() {
            List<String> both = traits();
            both.add(both.size() / 2, Sex.VARIABLE);
            return both;
        }

        String expression(String locus) {
            Locus at = model.locus(locus);
            AllelePair pair = genotype.pair(locus).orElseThrow();
            return at.expression(pair, sex);
        }

        /** The law of animals like this one. */
        KitLaw law() {
            List<Chain> chains = new ArrayList<>();
            for (Locus locus : model.loci().values()) {
                BigInteger[] shares = new BigInteger[locus.expressions().size()];
                Arrays.fill(shares, BigInteger.ZERO);
                shares[locus.expressions().indexOf(expression(locus.id()))] = BigInteger.ONE;
                chains.add(Chain.single(locus.id(), shares));
            }
            return KitLaw.of(sex, chains);
        }

        <T> Map<T, Probability> weighed(Diagram<T> diagram) {
            Weights weights = diagram.weigh(law());
            Map<T, Probability> chances = new LinkedHashMap<>();
            for (int i = 0; i < weights.shares().length; i++) {
                if (weights.shares()[i].signum() > 0) {
                    chances.put(diagram.outcomes().get(i), Probability.of(weights.shares()[i], weights.total()));
                }
            }
            return chances;
        }

        @Override
        public String toString() {
            return model + " " + sex + " " + genotype + " " + stage + " " + traits() + " seed " + seed;
        }
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 400)
    void interpreter_agrees_with_every_way_of_living(@ForAll("seeds") long seed) {
        interpreterAgrees(draw(seed));
    }

    @Property(tries = 400)
    void diagram_agrees_with_every_way_of_living(@ForAll("seeds") long seed) {
        diagramAgrees(draw(seed));
    }

    @Property(tries = 300)
    void sightings_are_weighed_as_in_every_way_of_living(@ForAll("seeds") long seed) {
        sightingsAgree(draw(seed));
    }

    @Property(tries = 100)
    void what_some_genotypes_may_show_is_what_any_of_them_does(@ForAll("seeds") long seed) {
        amongAgrees(draw(seed));
    }

    @Property(tries = 200)
    void the_share_lost_is_that_of_the_statements_that_bear_on_the_view(@ForAll("seeds") long seed) {
        lossAgrees(draw(seed));
    }

    @Property(tries = 150)
    void two_records_of_one_animal_are_of_one_life(@ForAll("seeds") long seed) {
        recordsAreOfOneLife(draw(seed));
    }

    @Test
    @Tag("long")
    void a_first_record_often_tells_something_about_a_second() {
        int telling = 0;
        for (long seed = 0; seed < 1000 && telling < 20; seed++) {
            telling += recordsAreOfOneLife(draw(seed)) ? 1 : 0;
        }
        assertEquals(20, telling);
    }

    @Property(tries = 100)
    void a_record_that_leaves_several_looks_open_is_of_one_life_too(@ForAll("seeds") long seed) {
        oneOfSeveralLooks(draw(seed));
    }

    @Test
    void records_that_leave_looks_open_often_tell_something() {
        int telling = 0;
        for (long seed = 0; seed < 400 && telling < 5; seed++) {
            telling += oneOfSeveralLooks(draw(seed)) ? 1 : 0;
        }
        assertEquals(5, telling);
    }

    private static Case draw(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Sex sex = random.nextBoolean() ? Sex.FEMALE : Sex.MALE;
        return new Case(
                model,
                CompiledModel.of(model),
                new Genome(DocumentMaps.of(model)),
                sex,
                RandomAnimals.genotype(model, sex, random.nextLong()),
                RandomAnimals.stage(model, random.nextLong()),
                seed);
    }

    /** What the reference sees; it does not tell the sex. */
    private static Map<Phenotype, Probability> lived(Case one) {
        Map<Phenotype, Probability> looks = new LinkedHashMap<>();
        Life.looks(one.genome(), one.animal(), RandomAnimals.plain(one.stage()), one.traits())
                .forEach((look, chance) -> {
                    Map<String, String> withSex = new LinkedHashMap<>(look);
                    withSex.put(Sex.VARIABLE, one.sex().word());
                    looks.put(Phenotype.from(withSex), chance);
                });
        return looks;
    }

    static void interpreterAgrees(Case one) {
        Distribution<Expressed> ways =
                one.compiled().express(one.genotype(), one.sex(), one.stage(), one.traitsAndSex());
        assertEquals(lived(one), ways.map(Expressed::phenotype).asMap(), one::toString);
        for (Expressed way : ways.outcomes()) {
            Map<String, String> draws = new LinkedHashMap<>();
            way.traits()
                    .values()
                    .forEach(trace -> trace.draw()
                            .ifPresent(outcome -> draws.put(trace.rule().orElseThrow(), outcome)));
            assertEquals(
                    way,
                    one.compiled().express(way.expressions(), one.sex(), one.stage(), draws, one.traitsAndSex()),
                    one::toString);
        }
    }

    static void diagramAgrees(Case one) {
        View view = new View(one.traitsAndSex(), one.stage(), Census.CONCEIVED);
        assertEquals(lived(one), one.weighed(one.compiled().diagram(view)), one::toString);
    }

    static void amongAgrees(Case one) {
        Genotype other = RandomAnimals.genotype(one.model(), one.sex(), one.seed());
        GenotypeSet either = GenotypeSet.of(one.model(), one.genotype()).or(GenotypeSet.of(one.model(), other));
        Set<Phenotype> looks = new LinkedHashSet<>();
        for (Genotype genotype : List.of(one.genotype(), other)) {
            Animal animal =
                    RandomAnimals.animals(one.genome(), one.sex(), genotype).get(0);
            Life.looks(one.genome(), animal, RandomAnimals.plain(one.stage()), one.traits())
                    .keySet()
                    .forEach(look -> looks.add(Phenotype.from(look)));
        }
        View view = new View(one.traits(), one.stage(), Census.CONCEIVED);
        assertEquals(looks, one.compiled().diagram(view).among(either.of(one.sex())), one::toString);
    }

    static void sightingsAgree(Case one) {
        SplittableRandom random = new SplittableRandom(one.seed());
        // what another animal showed, so that this one may be unable to
        List<Sighting> seen = RandomAnimals.sightings(
                one.model(),
                one.genome(),
                one.sex(),
                RandomAnimals.genotype(one.model(), one.sex(), random.nextLong()),
                random.nextLong());
        Probability expected = Life.agrees(one.genome(), one.animal(), RandomAnimals.plain(seen));
        Diagram<Boolean> matching = one.compiled().matching(seen, Census.CONCEIVED);
        assertEquals(expected, one.weighed(matching).getOrDefault(true, Probability.ZERO), () -> one + " seen " + seen);
        List<Probability> weights = one.compiled().evidence(seen).stream()
                .filter(box -> box.box()
                        .holds(name -> name.equals(Sex.VARIABLE) ? one.sex().word() : one.expression(name)))
                .map(WeightedBox::weight)
                .toList();
        assertEquals(expected.isZero() ? List.of() : List.of(expected), weights, () -> one + " seen " + seen);
        Sighting first = seen.get(0);
        boolean may = !Life.agrees(one.genome(), one.animal(), RandomAnimals.plain(List.of(first)))
                .isZero();
        assertEquals(
                may,
                one.compiled().showing(first).of(one.sex()).contains(one.genotype()),
                () -> one + " seen " + first);
    }

    static void lossAgrees(Case one) {
        for (Census census : Census.values()) {
            View view = new View(one.traitsAndSex(), one.stage(), census);
            Probability lives = Probability.ONE;
            for (Viability statement : one.model().viability().values()) {
                if (one.compiled().lociRead(view).contains(statement.locus())
                        && statement.expressions().contains(one.expression(statement.locus()))
                        && statement.sex().orElse(one.sex()) == one.sex()
                        && census != Census.CONCEIVED) {
                    lives = lives.times(statement.birth());
                    lives = census == Census.SCORED ? lives.times(statement.scored()) : lives;
                }
            }
            Probability kept = Probability.ZERO;
            for (Probability chance : one.weighed(one.compiled().diagram(view)).values()) {
                kept = kept.plus(chance);
            }
            assertEquals(lives, kept, one::toString);
        }
    }

    /**
     * The chance of two looks, at two stages, is that of every life that shows both; at one stage twice, the same look comes again.
     *
     * @return whether some second look is not as likely after a first one as it is by itself
     */
    static boolean recordsAreOfOneLife(Case one) {
        LifeStage later = RandomAnimals.stage(one.model(), one.seed() + 1);
        List<String> traits = new ArrayList<>(one.model().visibleTraits());
        Map<List<Map<String, String>>, Probability> histories = Life.histories(
                one.genome(),
                one.animal(),
                List.of(RandomAnimals.plain(one.stage()), RandomAnimals.plain(later)),
                traits);
        boolean telling = false;
        for (List<Map<String, String>> looks : histories.keySet()) {
            if (looks.get(0).size() < traits.size() || looks.get(1).size() < traits.size()) {
                return false; // a trait that is not modelled is evidence of nothing
            }
        }
        for (Map.Entry<List<Map<String, String>>, Probability> history : histories.entrySet()) {
            Sighting first =
                    new Sighting(one.stage(), Phenotype.from(history.getKey().get(0)));
            Sighting second =
                    new Sighting(later, Phenotype.from(history.getKey().get(1)));
            Probability both = shows(one, List.of(first, second));
            assertEquals(history.getValue(), both, () -> one + " " + first + " " + second);
            assertEquals(both, shows(one, List.of(second, first)), () -> one + " " + first + " " + second);
            assertEquals(shows(one, List.of(first)), shows(one, List.of(first, first)), one::toString);
            telling |= !both.equals(shows(one, List.of(first)).times(shows(one, List.of(second))));
        }
        return telling;
    }

    /**
     * After a record that leaves several looks open, each later look has the chance of all lives that show it and one of them.
     *
     * @return whether there were several looks to leave open and others to rule out
     */
    static boolean oneOfSeveralLooks(Case one) {
        LifeStage later = RandomAnimals.stage(one.model(), one.seed() + 1);
        List<String> traits = new ArrayList<>(one.model().visibleTraits());
        Map<List<Map<String, String>>, Probability> histories = Life.histories(
                one.genome(),
                one.animal(),
                List.of(RandomAnimals.plain(one.stage()), RandomAnimals.plain(later)),
                traits);
        Set<Phenotype> shown = new LinkedHashSet<>();
        for (List<Map<String, String>> looks : histories.keySet()) {
            if (looks.get(0).size() < traits.size() || looks.get(1).size() < traits.size()) {
                return false; // a trait that is not modelled is evidence of nothing
            }
            shown.add(Phenotype.from(looks.get(0)));
        }
        Set<Phenotype> open = new LinkedHashSet<>();
        int number = 0;
        for (Phenotype look : shown) {
            if (number++ % 3 != 2) {
                open.add(look);
            }
        }
        Map<Phenotype, Probability> expected = new LinkedHashMap<>();
        histories.forEach((looks, chance) -> {
            if (open.contains(Phenotype.from(looks.get(0)))) {
                expected.merge(Phenotype.from(looks.get(1)), chance, Probability::plus);
            }
        });
        Map<Phenotype, Probability> found = one.weighed(one.compiled()
                .diagramAfter(new View(traits, later, Census.CONCEIVED), List.of(new Reading(one.stage(), open))));
        assertEquals(expected, found, one::toString);
        assertTrue(
                one.compiled()
                        .allowedBy(List.of(new Reading(one.stage(), open)))
                        .contains(one.genotype()),
                one::toString);
        return open.size() > 1 && open.size() < shown.size();
    }

    private static Probability shows(Case one, List<Sighting> seen) {
        return one.weighed(one.compiled().matching(seen, Census.CONCEIVED)).getOrDefault(true, Probability.ZERO);
    }
}
