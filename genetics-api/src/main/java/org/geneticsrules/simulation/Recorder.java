package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/** Writes down what a breeder would: the traits asked for, of animals looked at, as far as they can be told then and with what errors. */
final class Recorder {

    private final List<Watch> watches = new ArrayList<>();
    private final List<Assay> assays = new ArrayList<>();

    Recorder(Model model, List<PlannedLook> looks, Confusions confusions, List<PlannedTest> tests, Genome genome) {
        looks.forEach(look -> watches.add(new Watch(model, look, confusions)));
        for (PlannedTest test : tests) {
            int number = genome.loci().indexOf(model.locus(test.locus()));
            assays.add(new Assay(test, genome, number));
        }
    }

    /** The traits that can be told at a look. */
    static List<String> told(Model model, PlannedLook look) {
        return look.traits().stream()
                .filter(trait -> trait.equals(Sex.VARIABLE)
                        || model.catalogue()
                                .trait(trait)
                                .filter(one -> canBeTold(one, look))
                                .isPresent())
                .toList();
    }

    private static boolean canBeTold(Trait trait, PlannedLook look) {
        return trait.judgeable(look.stage()) != Judgeable.NO && trait.judgeable(look.light()) != Judgeable.NO;
    }

    List<Observation> observations(Coat coat, Chance chance) {
        ImmutableList.Builder<Observation> all = ImmutableList.builder();
        for (int i = 0; i < watches.size(); i++) {
            watches.get(i).record(coat.looks().get(i).phenotype(), chance).ifPresent(all::add);
        }
        return all.build();
    }

    List<GenotypeTest> tests(short[] animal, Sex sex, Chance chance) {
        if (assays.isEmpty()) {
            return ImmutableList.of();
        }
        ImmutableList.Builder<GenotypeTest> all = ImmutableList.builder();
        assays.forEach(assay -> assay.report(animal, sex, chance).ifPresent(all::add));
        return all.build();
    }

    /** What one state may be recorded as. */
    @SuppressWarnings("ArrayRecordComponent") // a table that is read, never compared
    private record Read(List<String> states, double[] sums) {}

    private static final class Watch {

        /** When more looks than this are kept, all are forgotten. */
        private static final int MOST = 1 << 12;

        private final PlannedLook look;
        private final double share;
        private final List<String> told;

        /** By trait and state, what is recorded instead; only of states that are confused. */
        private final Map<List<String>, Read> confused = new HashMap<>();

        /** What was recorded before, by what was read. */
        private final Map<Phenotype, Optional<Observation>> known = new HashMap<>();

        Watch(Model model, PlannedLook look, Confusions confusions) {
            this.look = look;
            this.share = look.share().toDouble();
            this.told = told(model, look);
            for (String trait : told) {
                for (String shown : trait.equals(Sex.VARIABLE) ? List.<String>of() : model.states(trait)) {
                    List<String> states = new ArrayList<>();
                    List<Double> chances = new ArrayList<>();
                    for (String read : model.states(trait)) {
                        Probability chance = confusions.chance(trait, shown, read, look.stage());
                        if (!chance.isZero()) {
                            states.add(read);
                            chances.add(chance.toDouble());
                        }
                    }
                    if (!states.equals(List.of(shown))) {
                        double[] sums = Chance.sums(
                                chances.stream().mapToDouble(chance -> chance).toArray());
                        confused.put(List.of(trait, shown), new Read(states, sums));
                    }
                }
            }
        }

        Optional<Observation> record(Phenotype shown, Chance chance) {
            if (!chance.happens(share)) {
                return Optional.empty();
            }
            Phenotype read = confused.isEmpty() ? shown : read(shown, chance);
            if (known.size() > MOST) {
                known.clear();
            }
            return known.computeIfAbsent(read, this::observation);
        }

        private Phenotype read(Phenotype shown, Chance chance) {
            Map<String, String> states = new LinkedHashMap<>();
            shown.asMap().forEach((trait, state) -> {
                Read instead = confused.get(List.of(trait, state));
                states.put(trait, instead == null ? state : instead.states().get(chance.among(instead.sums())));
            });
            return Phenotype.from(states);
        }

        private Optional<Observation> observation(Phenotype read) {
            Phenotype left = read.restrictedTo(told);
            if (left.traits().isEmpty()) {
                return Optional.empty();
            }
            Observation seen = Observation.of(look.stage(), left);
            return Optional.of(look.light().map(seen::in).orElse(seen));
        }
    }

    private static final class Assay {

        private final Genome genome;
        private final int locus;
        private final PlannedTest test;

        Assay(PlannedTest test, Genome genome, int locus) {
            this.test = test;
            this.genome = genome;
            this.locus = locus;
        }

        Optional<GenotypeTest> report(short[] animal, Sex sex, Chance chance) {
            Locus at = genome.loci().get(locus);
            if (at.transmission().strands(sex) == 0
                    || !chance.happens(test.share().toDouble())) {
                return Optional.empty();
            }
            AllelePair pair = genome.pair(animal, locus);
            List<AllelePair> others = new ArrayList<>(at.pairs(sex));
            others.remove(pair);
            boolean wrong = !others.isEmpty() && chance.happens(test.error().toDouble());
            return Optional.of(GenotypeTest.of(wrong ? others.get(chance.below(others.size())) : pair, test.error()));
        }
    }
}
