package org.geneticsrules.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.SharedRecords;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPatches;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.Relabelled;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** What steps may find, held to the list of all ways in which a pedigree may have come about, under a model and what a patch makes of it. */
@Once
class DistinguishingLaws {

    /** More ways than these are not listed. */
    private static final long MOST = 6_000;

    /** Nor is begun with more genotypes of all animals than these. */
    private static final double MOST_WAYS = 1e6;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 40)
    void looks_and_kits_are_as_likely_as_in_the_list_of_all_ways(@ForAll("pedigrees") RandomPedigree random) {
        Statistics.collect(looks_and_kits_are_as_likely_of(random));
    }

    /** The same for seeds that are known to reach each kind of step. */
    @Example
    void both_kinds_of_steps_are_met() {
        Map<String, Integer> met = new TreeMap<>();
        for (long seed = 0; seed < 30; seed++) {
            met.merge(looks_and_kits_are_as_likely_of(RandomPedigrees.pedigree(seed)), 1, Integer::sum);
        }
        assertTrue(met.getOrDefault("look", 0) > 1, met::toString);
        assertTrue(met.getOrDefault("kits", 0) > 1, met::toString);
    }

    static String looks_and_kits_are_as_likely_of(RandomPedigree random) {
        Asked asked = new Asked(random);
        Optional<Distinguishing> question = asked.question();
        if (question.isEmpty()) {
            return "nothing shared";
        }
        Optional<Step> step = asked.step();
        if (step.isEmpty()) {
            return "nothing to do";
        }
        Worth worth;
        try {
            worth = question.get().worth(step.get());
        } catch (ProblemsException notAsked) {
            String message = String.valueOf(notAsked.getMessage());
            assertTrue(
                    message.contains("trait-not-shared")
                            || message.contains("genotype-sex")
                            || message.contains("frequenc")
                            || message.contains("stage-needed"),
                    message);
            return "refused";
        }
        return worth.standing() == Worth.Standing.NOT_WORKED_OUT
                        || (worth.standing() == Worth.Standing.NOT_PROPOSED && !isChildless(worth))
                ? worth.standing().words()
                : asked.check(worth);
    }

    private static boolean isChildless(Worth worth) {
        return worth.reason()
                .filter(why -> why.contains("lives to be looked at"))
                .isPresent();
    }

    /** Two models and a step, drawn. */
    private static final class Asked {

        private final SplittableRandom draw;
        private final RandomPedigree random;
        private final Kindred scored;
        private final List<Model> models;
        private final LifeStage stage;
        private final Map<String, String> brute = new LinkedHashMap<>();

        Asked(RandomPedigree random) {
            this.random = random;
            this.draw = new SplittableRandom(random.seed());
            this.scored = RecordedKindred.scored(random.kindred());
            Model base = random.model();
            Model other = RandomPatches.draw(base, draw.nextLong())
                    .map(RandomPatches.Drawn::patched)
                    .filter(one ->
                            one.populations().keySet().equals(base.populations().keySet())
                                    && one.catalogue()
                                            .reference()
                                            .equals(base.catalogue().reference()))
                    .orElse(base);
            this.models = List.of(base, other);
            List<String> seasons = base.catalogue().seasons();
            LifeStage when = new LifeStage(OptionalInt.of(3), OptionalInt.of(2), Optional.empty());
            this.stage = seasons.isEmpty() ? when : when.in(seasons.get(0));
            brute.put("week", "3");
            brute.put("moult", "2");
            stage.season().ifPresent(season -> brute.put("season", season));
        }

        private List<Candidate> candidates() {
            return List.of(
                    Candidate.of(models.get(0)).called("one"),
                    Candidate.of(models.get(1)).called("other"));
        }

        Optional<Distinguishing> question() {
            Pedigree pedigree = RecordedKindred.pedigree(random.model(), scored);
            try {
                return Optional.of(Distinguishing.of(candidates(), pedigree)
                        .with(RecordedKindred.confusions(scored))
                        .from(random.model().populations().keySet().iterator().next()));
            } catch (ProblemsException e) {
                assertTrue(String.valueOf(e.getMessage()).contains("nothing-shared"), e.getMessage());
                return Optional.empty();
            }
        }

        Optional<Step> step() {
            List<String> traits = new ArrayList<>(random.model().visibleTraits());
            traits.removeAll(SharedRecords.unclaimed(candidates()).keySet());
            if (traits.isEmpty()) {
                return Optional.empty();
            }
            String trait = traits.get(draw.nextInt(traits.size()));
            List<String> ids = scored.members().stream().map(Kindred.Member::id).toList();
            String animal = ids.get(draw.nextInt(ids.size()));
            if (draw.nextInt(2) == 0) {
                return Optional.of(new Step.Look(animal, List.of(trait), stage, Optional.empty()));
            }
            List<String> males =
                    ids.stream().filter(id -> !scored.sex(id).equals("female")).toList();
            List<String> females =
                    ids.stream().filter(id -> !scored.sex(id).equals("male")).toList();
            if (males.isEmpty() || females.isEmpty()) {
                return Optional.empty();
            }
            String sire = males.get(draw.nextInt(males.size()));
            String dam = females.get(draw.nextInt(females.size()));
            return sire.equals(dam)
                    ? Optional.empty()
                    : Optional.of(new Step.Kits(
                            Effort.PLANNED_MATING,
                            sire,
                            dam,
                            1 + draw.nextInt(4) / 3,
                            1,
                            List.of(trait),
                            stage,
                            Optional.empty()));
        }

        String check(Worth worth) {
            boolean bare = scored.members().stream()
                    .allMatch(one -> one.sightings().isEmpty() && one.tests().isEmpty());
            Kindred held = bare
                    ? scored
                    : shared(SharedRecords.of(
                            candidates(), RecordedKindred.pedigree(random.model(), scored), List.of()));
            int kits = worth.step() instanceof Step.Kits of ? of.kits() : 0;
            for (int m = 0; m < models.size(); m++) {
                Genome genome = new Genome(DocumentMaps.of(models.get(m)));
                double genotypes = Genome.SEXES.stream()
                        .mapToInt(sex -> genome.genotypes(sex).size())
                        .max()
                        .orElseThrow();
                if (Math.pow(genotypes, scored.members().size() + kits) > MOST_WAYS) {
                    return "too many";
                }
                Kindred before = kits == 0 ? held : litter(held, worth, List.of());
                Optional<Double> given = log(genome, before);
                if (given.isEmpty()) {
                    return "too many";
                }
                if (isChildless(worth)) {
                    boolean named = worth.reason()
                            .orElseThrow()
                            .matches(".* by (one, )?" + candidates().get(m).name() + "(, other)?");
                    if (named) {
                        assertEquals(Double.NEGATIVE_INFINITY, given.get(), random + " " + worth.reason());
                    }
                    continue;
                }
                if (worth.standing() == Worth.Standing.SETTLED) {
                    if (given.get() == Double.NEGATIVE_INFINITY) {
                        return "contradiction";
                    }
                    continue;
                }
                if (given.get() == Double.NEGATIVE_INFINITY) {
                    // only relatives are asked; others may contradict themselves
                    Kindred relatives = relatives(before, worth.animals());
                    Optional<Double> asked = log(genome, relatives);
                    assertTrue(asked.isEmpty() || asked.get() > Double.NEGATIVE_INFINITY, random.toString());
                    return "contradiction elsewhere";
                }
                double sum = 0;
                for (Outcome outcome : worth.outcomes()) {
                    List<String> found = new ArrayList<>();
                    outcome.found().forEach((one, count) -> {
                        for (int k = 0; k < count; k++) {
                            found.add(one);
                        }
                    });
                    Optional<Double> with =
                            log(genome, kits == 0 ? look(held, worth, found.get(0)) : litter(held, worth, found));
                    if (with.isEmpty()) {
                        return "too many";
                    }
                    // two kits with different looks may come in two orders
                    double orders = new HashSet<>(found).size();
                    double expected = orders * Math.exp(with.get() - given.get());
                    sum += expected;
                    assertEquals(expected, outcome.chances().get(m), 1e-9, random + " " + worth.step() + " " + outcome);
                }
                assertEquals(1, sum, 1e-9, random + " " + worth.step());
            }
            assertTrue(worth.standing() != Worth.Standing.SETTLED, random + ": no model is excluded");
            if (isChildless(worth)) {
                return "no kit lives";
            }
            measures(worth);
            return kits == 0 ? "look" : "kits";
        }

        /** Those whom litters tie to some animals. */
        private static Kindred relatives(Kindred all, Set<String> animals) {
            Set<String> ids = new HashSet<>(animals);
            List<Kindred.Litter> litters = List.of();
            int before = 0;
            while (before < ids.size()) {
                before = ids.size();
                litters = all.litters().stream()
                        .filter(litter -> members(litter).stream().anyMatch(ids::contains))
                        .toList();
                litters.forEach(litter -> ids.addAll(members(litter)));
            }
            return new Kindred(
                    all.members().stream().filter(one -> ids.contains(one.id())).toList(), litters, all.confusions());
        }

        private static List<String> members(Kindred.Litter litter) {
            List<String> all = new ArrayList<>(litter.kits());
            all.add(litter.dam());
            litter.sires().forEach(sire -> all.add(sire.id()));
            all.removeIf(String::isEmpty);
            return all;
        }

        private Kindred look(Kindred held, Worth worth, String found) {
            String animal = ((Step.Look) worth.step()).animal();
            return new Kindred(
                    held.members().stream()
                            .map(one -> one.id().equals(animal) ? seen(one, found) : one)
                            .toList(),
                    held.litters(),
                    held.confusions());
        }

        private Kindred.Member seen(Kindred.Member one, String found) {
            List<Kindred.Sighting> all = new ArrayList<>(one.sightings());
            all.add(new Kindred.Sighting(brute, List.of(Phenotype.parse(found).asMap())));
            return new Kindred.Member(one.id(), one.sex(), one.population(), all, one.tests());
        }

        private Kindred litter(Kindred held, Worth worth, List<String> found) {
            Step.Kits step = (Step.Kits) worth.step();
            List<Kindred.Member> members = new ArrayList<>(held.members());
            List<String> ids = new ArrayList<>();
            for (int k = 0; k < step.kits(); k++) {
                String id = "supposed" + k;
                ids.add(id);
                String text = found.isEmpty() ? "" : found.get(k);
                String sex = text.startsWith("female, ") ? "female" : text.startsWith("male, ") ? "male" : "";
                Kindred.Member kit = new Kindred.Member(id, sex, "", List.of(), List.of());
                members.add(text.isEmpty() ? kit : seen(kit, sex.isEmpty() ? text : text.substring(sex.length() + 2)));
            }
            List<Kindred.Litter> litters = new ArrayList<>(held.litters());
            litters.add(new Kindred.Litter(
                    "supposed",
                    step.dam(),
                    "",
                    List.of(new Kindred.Candidate(step.sire(), "", Probability.ONE)),
                    false,
                    "scored",
                    ids));
            return new Kindred(members, litters, held.confusions());
        }

        /** The records of which both models speak, whatever the animal. */
        private Kindred shared(SharedRecords records) {
            Set<String> left = new HashSet<>();
            records.dropped().forEach(one -> left.add(one.kind() + " " + one.id()));
            List<Kindred.Member> members = new ArrayList<>();
            for (Kindred.Member one : scored.members()) {
                List<Kindred.Sighting> seen = new ArrayList<>();
                for (Kindred.Sighting sighting : one.sightings()) {
                    List<Map<String, String>> looks = new ArrayList<>();
                    for (Map<String, String> look : sighting.looks()) {
                        Map<String, String> kept = new LinkedHashMap<>(look);
                        kept.keySet().removeIf(trait -> left.contains(SharedRecords.Kind.TRAIT + " " + trait));
                        if (!kept.isEmpty() && !looks.contains(kept)) {
                            looks.add(kept);
                        }
                    }
                    if (!looks.isEmpty()) {
                        seen.add(new Kindred.Sighting(sighting.stage(), looks));
                    }
                }
                List<Kindred.Test> tests = one.tests().stream()
                        .filter(test -> !left.contains(SharedRecords.Kind.LOCUS + " " + test.locus()))
                        .toList();
                members.add(new Kindred.Member(one.id(), scored.sex(one.id()), one.population(), seen, tests));
            }
            return new Kindred(members, scored.litters(), scored.confusions());
        }
    }

    /** What holds of all expectations. */
    private static void measures(Worth worth) {
        boolean differs = worth.outcomes().stream()
                .anyMatch(one -> Math.abs(one.chances().get(0) - one.chances().get(1)) > 1e-7);
        if (differs) {
            assertEquals(Worth.Standing.TELLS, worth.standing());
            assertTrue(worth.bits() > 0);
        }
        assertTrue(worth.bits() <= 1 + 1e-12, "one model of two, believed in alike, is one bit");
        for (ExpectedRatio ratio : worth.ratios()) {
            assertTrue(ratio.expected() >= 0);
            assertTrue(!differs || ratio.expected() > 0);
            assertTrue(ratio.excluding() >= 0 && ratio.excluding() <= 1 + 1e-9);
            assertEquals(ratio.excluding() > 0, ratio.expected() == Double.POSITIVE_INFINITY);
        }
    }

    private static Optional<Double> log(Genome genome, Kindred kindred) {
        return Worlds.within(genome, kindred, MOST)
                .map(worlds -> Math.log(worlds.likelihood().toDouble()));
    }

    /** A model under other names of loci, alleles and expressions foretells the same of every look and litter. */
    @Property(tries = 30)
    void renaming_changes_nothing(@ForAll("pedigrees") RandomPedigree random) {
        Statistics.collect(renaming_changes_nothing_of(random));
    }

    /** The same for seeds that are known to reach steps. */
    @Example
    void renaming_is_tried_on_steps() {
        Map<String, Integer> met = new TreeMap<>();
        for (long seed = 0; seed < 12; seed++) {
            met.merge(renaming_changes_nothing_of(RandomPedigrees.pedigree(seed)), 1, Integer::sum);
        }
        assertTrue(met.getOrDefault("tells nothing", 0) > 1, met::toString);
    }

    static String renaming_changes_nothing_of(RandomPedigree random) {
        Asked asked = new Asked(random);
        Optional<Step> step = asked.step();
        if (step.isEmpty()) {
            return "nothing to do";
        }
        Worth worth;
        try {
            worth = Distinguishing.of(
                            List.of(
                                    Candidate.of(random.model()).called("one"),
                                    Candidate.of(Relabelled.of(random.model()).model())
                                            .called("other")),
                            RecordedKindred.pedigree(random.model(), asked.scored))
                    .with(RecordedKindred.confusions(asked.scored))
                    .from(random.model().populations().keySet().iterator().next())
                    .worth(step.get());
        } catch (ProblemsException notShared) {
            return "refused";
        }
        assertTrue(worth.standing() != Worth.Standing.TELLS, random + " " + worth);
        assertEquals(0, worth.bits());
        return worth.standing().words();
    }
}
