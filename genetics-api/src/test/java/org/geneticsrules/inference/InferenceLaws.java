package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Posteriors of random pedigrees against a list of every way in which they may have come about. */
@Once
class InferenceLaws {

    private static final double CLOSE = 1e-12;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    /** A naming error that only one sex can make, of an animal of unknown sex: its chance was once counted for two groups of loci. */
    @Example
    void a_naming_error_of_one_sex_counts_once() {
        every_number_agrees_with_the_list(RandomPedigrees.pedigree(5362655830761865352L));
    }

    @Property(tries = 80)
    void every_number_agrees_with_the_list(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Worlds worlds = Worlds.of(random.genome(), kindred);
        Pedigree pedigree = RecordedKindred.pedigree(random.model(), kindred);
        Conclusions found = Inference.of(CompiledModel.of(random.model()), pedigree)
                .with(RecordedKindred.confusions(kindred))
                .conclude();
        if (worlds.size() == 0) {
            assertFalse(found.isConsistent());
            return;
        }
        assertTrue(found.isConsistent());
        double log = Math.log(worlds.likelihood().toDouble());
        assertEquals(log, found.logLikelihood(), CLOSE * Math.max(1, Math.abs(log)));
        for (Kindred.Member member : kindred.members()) {
            String id = member.id();
            double female =
                    worlds.sexes(id).getOrDefault("female", Probability.ZERO).toDouble();
            assertEquals(female, found.female(id).orElseThrow(), CLOSE);
            for (String locus : random.model().loci().keySet()) {
                Map<String, Probability> expected = worlds.genotypes(id, locus);
                Posterior posterior = found.at(id, locus).orElseThrow();
                double sum = 0;
                for (Map.Entry<AllelePair, Double> one : posterior.chances().entrySet()) {
                    double chance = expected.getOrDefault(name(one.getKey()), Probability.ZERO)
                            .toDouble();
                    assertEquals(chance, one.getValue(), CLOSE, () -> id + " " + one.getKey());
                    sum += one.getValue();
                    if (found.excluded(id, locus).contains(one.getKey())) {
                        assertEquals(0, chance);
                    }
                }
                assertEquals(1, sum, CLOSE);
            }
            phases(random.model(), id, worlds, found);
            if (kindred.litterOf(id).isPresent()) {
                Map<String, Double> sires = found.sires(id);
                Map<String, Double> expected = new LinkedHashMap<>();
                worlds.sires(id)
                        .forEach((candidate, chance) -> expected.merge(
                                kindred.litterOf(id)
                                        .orElseThrow()
                                        .sires()
                                        .get(candidate)
                                        .id(),
                                chance.toDouble(),
                                Double::sum));
                sires.forEach((name, chance) -> assertEquals(expected.getOrDefault(name, 0.0), chance, CLOSE));
            }
        }
    }

    @Property(tries = 100)
    void what_animals_carry_together_agrees_with_the_list(
            @ForAll("pedigrees") RandomPedigree random, @ForAll long seed) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Worlds worlds = Worlds.of(random.genome(), kindred);
        List<String> ids = kindred.members().stream().map(Kindred.Member::id).collect(Collectors.toList());
        Collections.shuffle(ids, new Random(seed));
        List<String> asked = ids.subList(0, Math.min(2, ids.size()));
        List<String> loci = List.copyOf(random.model().loci().keySet());
        JointPosterior found = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred))
                .with(RecordedKindred.confusions(kindred))
                .together(asked, loci);
        if (worlds.size() == 0) {
            Statistics.collect("contradicted");
            return;
        }
        assertEquals(Standing.EXACT, found.standing());
        Statistics.collect(found.parts().size() == 1 ? "tied" : "independent parts");
        Map<List<Map<String, String>>, Double> chances = new LinkedHashMap<>();
        for (JointPosterior.Combination one : found.combinations()) {
            List<Map<String, String>> names = new ArrayList<>();
            for (String id : asked) {
                Map<String, String> named = new LinkedHashMap<>();
                Objects.requireNonNull(one.genotypes().get(id)).forEach((locus, pair) -> named.put(locus, name(pair)));
                names.add(named);
            }
            chances.merge(names, one.chance(), Double::sum);
        }
        Map<List<Map<String, String>>, Probability> expected = worlds.jointly(asked);
        expected.forEach((names, chance) ->
                assertEquals(chance.toDouble(), chances.getOrDefault(names, 0.0), CLOSE, names::toString));
        assertEquals(1, chances.values().stream().mapToDouble(one -> one).sum(), CLOSE);
        Statistics.coverage(coverage -> {
            coverage.check("tied").percentage(share -> share > 5);
            // 22 of 100 are: that none of 100 is happens once in 10^11
            coverage.check("independent parts").count(count -> count > 0);
        });
    }

    static String name(AllelePair pair) {
        return String.join("/", pair.alleles().stream().map(Allele::id).toList());
    }

    /** One in twelve random pedigrees leaves a phase open; these have animals of open and of known phase. */
    @ParameterizedTest
    @ValueSource(longs = {38, 49, 56})
    void phases_that_are_open_and_known_are_met(long seed) {
        RandomPedigree random = RandomPedigrees.pedigree(seed);
        every_number_agrees_with_the_list(random);
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Conclusions found = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred))
                .with(RecordedKindred.confusions(kindred))
                .conclude();
        LinkageGroup group = random.model().groups().values().iterator().next();
        Set<Boolean> met = new LinkedHashSet<>();
        kindred.members()
                .forEach(one -> met.add(found.isPhaseOpen(
                        one.id(), group.loci().get(0), group.loci().get(1))));
        assertEquals(2, met.size());
    }

    /** The phase of two linked loci is open if two animals that this may be have the same genotypes there, lying in other ways. */
    private static void phases(Model model, String id, Worlds worlds, Conclusions found) {
        for (LinkageGroup group : model.groups().values()) {
            for (String first : group.loci()) {
                for (String second : group.loci()
                        .subList(group.loci().indexOf(first) + 1, group.loci().size())) {
                    Map<List<List<String>>, Set<Set<List<String>>>> ways = new LinkedHashMap<>();
                    worlds.animals(id).keySet().forEach(one -> {
                        List<String> egg = strand(one.egg(), first, second);
                        List<String> sperm = strand(one.sperm(), first, second);
                        ways.computeIfAbsent(
                                        List.of(sorted(egg.get(0), sperm.get(0)), sorted(egg.get(1), sperm.get(1))),
                                        key -> new LinkedHashSet<>())
                                .add(new LinkedHashSet<>(List.of(egg, sperm)));
                    });
                    boolean open = ways.values().stream().anyMatch(one -> one.size() > 1);
                    assertEquals(open, found.isPhaseOpen(id, first, second), () -> id + " " + first + " " + second);
                }
            }
        }
    }

    private static List<String> strand(Map<String, String> strand, String first, String second) {
        return List.of(strand.getOrDefault(first, ""), strand.getOrDefault(second, ""));
    }

    private static List<String> sorted(String one, String other) {
        return one.compareTo(other) < 0 ? List.of(one, other) : List.of(other, one);
    }

    /** With little room a number is either the same or not given, and what is not given says so. */
    @Property(tries = 60)
    void within_little_room_nothing_is_guessed(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Inference inference = Inference.of(
                        CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred))
                .with(RecordedKindred.confusions(kindred));
        Conclusions all = inference.conclude();
        for (double cells : new double[] {0, 30, 300}) {
            Conclusions some = inference.within(cells).conclude();
            for (Kindred.Member member : kindred.members()) {
                for (String locus : random.model().loci().keySet()) {
                    Standing standing = some.standing(member.id(), locus);
                    Statistics.collect(standing);
                    assertEquals(
                            standing == Standing.EXACT,
                            some.at(member.id(), locus).isPresent());
                    if (standing == Standing.EXACT) {
                        Posterior expected = all.at(member.id(), locus).orElseThrow();
                        some.at(member.id(), locus)
                                .orElseThrow()
                                .chances()
                                .forEach((pair, chance) -> assertEquals(expected.chance(pair), chance, CLOSE));
                    } else if (standing == Standing.CONTRADICTED) {
                        assertEquals(Standing.CONTRADICTED, all.standing(member.id(), locus));
                    }
                }
            }
        }
        Statistics.coverage(coverage -> {
            coverage.check(Standing.EXACT).percentage(share -> share > 5);
            coverage.check(Standing.TOO_LARGE).percentage(share -> share > 5);
        });
    }

    /** Several threads find what one finds, number by number, on pedigrees with few and with many groups of loci, sampled or not. */
    @Property(tries = 80)
    void threads_make_no_difference(@ForAll("pedigrees") RandomPedigree random) {
        sameByThreads(random);
    }

    /** One in eight random pedigrees has several groups, so these were looked for. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 14})
    void threads_make_no_difference_to_several_groups(long seed) {
        assertTrue(sameByThreads(RandomPedigrees.pedigree(seed)) > 1);
    }

    /** Compares, and tells how many groups of loci there are. */
    private static int sameByThreads(RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        CompiledModel compiled = CompiledModel.of(random.model());
        Inference inference = Inference.of(compiled, RecordedKindred.pedigree(random.model(), kindred))
                .with(RecordedKindred.confusions(kindred));
        int groups = inference.question(random.model().loci().keySet()).count();
        for (Inference asked : List.of(inference, inference.within(30).sampling(Sampling.seeded(7)))) {
            Conclusions one = asked.conclude();
            Conclusions several = asked.inParallel().conclude();
            assertEquals(one.logLikelihood(), several.logLikelihood());
            for (Kindred.Member member : kindred.members()) {
                for (String locus : random.model().loci().keySet()) {
                    assertEquals(one.standing(member.id(), locus), several.standing(member.id(), locus));
                    assertEquals(one.at(member.id(), locus), several.at(member.id(), locus));
                }
            }
        }
        return groups;
    }

    /** What was found out about the model in one question is of use in another, and changes no number there. */
    @Property(tries = 40)
    void questions_about_another_pedigree_start_from_the_same_model(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        CompiledModel compiled = CompiledModel.of(random.model());
        Pedigree pedigree = RecordedKindred.pedigree(random.model(), kindred);
        PedigreeBuilder silent = Pedigree.builder("of.whom.nothing.is.recorded", "1");
        pedigree.individuals()
                .values()
                .forEach(one -> silent.add(new Individual(
                        one.id(),
                        one.sex(),
                        one.born(),
                        one.population(),
                        List.of(),
                        List.of(),
                        one.tests(),
                        one.hearing(),
                        one.fertility())));
        pedigree.litters().values().forEach(silent::add);
        Inference first = Inference.of(compiled, silent.build()).with(RecordedKindred.confusions(kindred));
        first.conclude();
        Conclusions found = first.about(pedigree).conclude();
        Conclusions expected = Inference.of(compiled, pedigree)
                .with(RecordedKindred.confusions(kindred))
                .conclude();
        assertEquals(expected.logLikelihood(), found.logLikelihood());
        assertEquals(expected.notices(), found.notices());
        for (String id : pedigree.order()) {
            for (String locus : random.model().loci().keySet()) {
                assertEquals(expected.at(id, locus), found.at(id, locus));
            }
        }
    }
}
