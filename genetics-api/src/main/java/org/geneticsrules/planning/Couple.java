package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.expression.View;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.JointPosterior;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * What two recorded animals may carry together by one model and all records held, and what each pair of genotypes makes of a kit's look. Given the
 * genotypes, kits are independent of one another.
 */
final class Couple {

    /** More pairs of genotypes than these are not gone through. */
    private static final int MOST_PAIRS = 4000;

    /** Nor are more looks of kits of pairs, where each is a pedigree of its own. */
    private static final int MOST_TIED = 1500;

    /** What a sire may carry, with what his mates may then carry. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Of(double weight, Map<String, AllelePair> sire, Map<String, AllelePair> dam, double[] chances) {}

    private final List<Of> pairs = new ArrayList<>();

    /** By what the sire carries, the weight of pairs of which no kit lives to be looked at. */
    private final Map<Map<String, AllelePair>, Double> childless = new LinkedHashMap<>();

    private final Optional<String> lacking;

    private Couple(Optional<String> lacking) {
        this.lacking = lacking;
    }

    static Couple of(Held held, String sire, String dam, Letters letters, Optional<String> population) {
        Model model = held.candidate().model();
        List<String> traits = List.copyOf(letters.all().get(0).look().traits());
        Set<String> loci = new LinkedHashSet<>(
                held.candidate().compiled().lociRead(View.of(traits).at(letters.stage())));
        model.viability().values().stream().map(Viability::locus).forEach(loci::add);
        if (loci.isEmpty()) {
            loci.add(model.loci().keySet().iterator().next());
        }
        try {
            JointPosterior together = held.inference().together(List.of(sire, dam), loci);
            if (together.standing() != Standing.EXACT) {
                return new Couple(Optional.of("what the parents may carry together is too much for an exact answer"));
            }
            List<JointPosterior.Combination> combinations = together.combinations();
            if (combinations.size() > MOST_PAIRS) {
                return new Couple(Optional.of("the parents may carry " + combinations.size()
                        + " pairs of genotypes, more than the " + MOST_PAIRS + " that are gone through"));
            }
            Couple couple = new Couple(Optional.empty());
            Kits kits = new Kits(held, sire, dam, letters, population);
            if (kits.tied() * combinations.size() > MOST_TIED) {
                return new Couple(Optional.of("the looks of kits tie many loci together, and the parents may carry "
                        + combinations.size() + " pairs of genotypes"));
            }
            for (JointPosterior.Combination one : combinations) {
                if (one.chance() == 0) {
                    continue;
                }
                Map<String, AllelePair> his = one.genotypes().getOrDefault(sire, Map.of());
                Map<String, AllelePair> hers = one.genotypes().getOrDefault(dam, Map.of());
                if (phased(model, his) || phased(model, hers)) {
                    return new Couple(
                            Optional.of(
                                    "a parent may carry different alleles at several linked loci, in a phase that is not known"));
                }
                Optional<Kits.Parents> parents = kits.parents(his, hers);
                if (parents.isEmpty()) {
                    return new Couple(Optional.of(
                            "no population of model " + model + " has all alleles that the parents may carry"));
                }
                double any = kits.log(parents.get());
                if (any == Double.NEGATIVE_INFINITY) {
                    couple.childless.merge(his, one.chance(), Double::sum);
                } else {
                    couple.pairs.add(new Of(one.chance(), his, hers, kits.looks(parents.get(), any)));
                }
            }
            return couple;
        } catch (TooLargeException much) {
            return new Couple(Optional.ofNullable(much.getMessage()));
        }
    }

    private static boolean phased(Model model, Map<String, AllelePair> carried) {
        for (LinkageGroup group : model.groups().values()) {
            long different = group.loci().stream()
                    .filter(locus -> {
                        AllelePair pair = carried.get(locus);
                        return pair != null && pair.isHeterozygous();
                    })
                    .count();
            if (different > 1) {
                return true;
            }
        }
        return false;
    }

    /** Why it was not worked out. */
    Optional<String> lacking() {
        return lacking;
    }

    /**
     * Whether a kit of theirs may live to be looked at. What they may carry so that none does is left out of all that follows, since kits that
     * are looked at show that they do not carry it; nor does how many of their kits live speak for anything else that they may carry.
     */
    boolean mayHaveKits() {
        return !pairs.isEmpty();
    }

    /** How any number of their kits may look, if some live. */
    Mixture kits() {
        return Mixture.of(
                pairs.stream().map(Of::weight).toList(),
                pairs.stream().map(Of::chances).toList());
    }

    /**
     * Whether each litter by another dam says the same of what the sire carries by being there: he has kits that live with the same chance,
     * whatever he carries. Else what he may carry hangs on how many litters there are, and is no one mixture.
     */
    boolean sameOfAllSires() {
        if (childless.isEmpty()) {
            return true;
        }
        Map<Map<String, AllelePair>, Double> living = new LinkedHashMap<>();
        pairs.forEach(one -> living.merge(one.sire(), one.weight(), Double::sum));
        double[] shares = living.entrySet().stream()
                .mapToDouble(one -> one.getValue() / (one.getValue() + childless.getOrDefault(one.getKey(), 0.0)))
                .toArray();
        return Arrays.stream(shares).allMatch(one -> Math.abs(one - shares[0]) < Mixture.SAME);
    }

    /**
     * How litters may look of which each has another dam, who is known as well as this one and stands to the sire as she does: independent of
     * one another, given what he carries.
     */
    Mixture litters(int kits) {
        Map<Map<String, AllelePair>, List<Of>> sires = new LinkedHashMap<>();
        pairs.forEach(one ->
                sires.computeIfAbsent(one.sire(), key -> new ArrayList<>()).add(one));
        Counts.Orders orders = new Counts.Orders();
        List<Double> weights = new ArrayList<>();
        List<double[]> chances = new ArrayList<>();
        for (List<Of> mates : sires.values()) {
            Mixture mixture = Mixture.of(
                    mates.stream().map(Of::weight).toList(),
                    mates.stream().map(Of::chances).toList());
            List<Double> litters = new ArrayList<>();
            Counts.each(
                    kits, mixture.classes(), counts -> litters.add(Math.exp(orders.log(counts) + mixture.log(counts))));
            weights.add(mates.stream().mapToDouble(Of::weight).sum());
            chances.add(litters.stream().mapToDouble(one -> one).toArray());
        }
        return Mixture.of(weights, chances);
    }

    /** The chances of looks of kits of parents who are tested. */
    private static final class Kits {

        private final Candidate candidate;
        private final LitterLikelihood litters;
        private final Individual sire;
        private final Individual dam;
        private final List<String> populations;
        private final LitterLikelihood.Seen born;
        private final List<LitterLikelihood.Seen> looks = new ArrayList<>();
        private final Map<List<Object>, Optional<LitterLikelihood.Seen>> parents = new HashMap<>();

        Kits(Held held, String sire, String dam, Letters letters, Optional<String> population) {
            this.candidate = held.candidate();
            this.litters = held.inference().litters();
            this.sire = held.relatives().individual(sire);
            this.dam = held.relatives().individual(dam);
            Set<String> ids = new LinkedHashSet<>();
            this.sire.population().ifPresent(ids::add);
            this.dam.population().ifPresent(ids::add);
            population.ifPresent(ids::add);
            ids.addAll(candidate.model().populations().keySet());
            this.populations = List.copyOf(ids);
            Individual kit = Individual.of("kit");
            this.born = litters.kit(kit);
            for (int x = 0; x < letters.size(); x++) {
                looks.add(litters.kit(letters.showing(kit, x)));
            }
        }

        /** How many looks tie loci together. */
        long tied() {
            return looks.stream().filter(litters::ties).count();
        }

        /** Two parents whose genotypes are known. */
        record Parents(
                Map<String, AllelePair> his,
                Map<String, AllelePair> hers,
                LitterLikelihood.Seen sire,
                LitterLikelihood.Seen dam) {}

        /** Parents with these genotypes; none if they cannot be put into any population. */
        Optional<Parents> parents(Map<String, AllelePair> his, Map<String, AllelePair> hers) {
            Optional<LitterLikelihood.Seen> male = parent(sire, Sex.MALE, his);
            Optional<LitterLikelihood.Seen> female = parent(dam, Sex.FEMALE, hers);
            return male.isPresent() && female.isPresent()
                    ? Optional.of(new Parents(his, hers, male.get(), female.get()))
                    : Optional.empty();
        }

        /** The natural logarithm of how likely they are and have a kit that lives; negative infinity if none does. */
        double log(Parents parents) {
            return litters.log(parents.sire(), parents.dam(), List.of(born));
        }

        /** The chance of each look of a kit that lives. */
        double[] looks(Parents parents, double any) {
            double[] chances = new double[looks.size()];
            double sum = 0;
            for (int x = 0; x < chances.length; x++) {
                chances[x] = Math.exp(litters.log(parents.sire(), parents.dam(), List.of(looks.get(x))) - any);
                sum += chances[x];
            }
            Steps.requireOne(
                    sum, () -> "all looks of a kit of " + parents.his() + " and " + parents.hers(), candidate.name());
            return chances;
        }

        private Optional<LitterLikelihood.Seen> parent(Individual one, Sex sex, Map<String, AllelePair> carried) {
            return parents.computeIfAbsent(List.of(sex, carried), key -> {
                for (String population : populations) {
                    Individual tested = Individual.of(one.id(), sex).from(population);
                    for (AllelePair pair : carried.values()) {
                        if (!pair.alleles().isEmpty()) {
                            tested = tested.with(GenotypeTest.of(pair));
                        }
                    }
                    LitterLikelihood.Seen seen = sex == Sex.MALE ? litters.sire(tested) : litters.dam(tested);
                    LitterLikelihood.Seen anyMate = sex == Sex.MALE
                            ? litters.dam(Individual.of("mate", Sex.FEMALE).from(population))
                            : litters.sire(Individual.of("mate", Sex.MALE).from(population));
                    double log = sex == Sex.MALE
                            ? litters.log(seen, anyMate, List.of())
                            : litters.log(anyMate, seen, List.of());
                    if (log > Double.NEGATIVE_INFINITY) {
                        return Optional.of(seen);
                    }
                }
                return Optional.empty();
            });
        }
    }
}
