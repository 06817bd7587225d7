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
        tests.forEach(test -> assays.add(new Assay(test, genome)));
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

    /**
     * What was written down of one look, not yet put into words.
     *
     * @param look the look
     * @param states what was read of each trait; {@link Lives#NO_CLAIM} where nothing was
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over, never compared
    record Note(PlannedLook look, String[] states) {

        boolean shows(Phenotype description) {
            for (Map.Entry<String, String> one : description.asMap().entrySet()) {
                int trait = look.traits().indexOf(one.getKey());
                if (trait < 0 || !states[trait].equals(one.getValue())) {
                    return false;
                }
            }
            return true;
        }

        /** Whether the sex was written down. */
        boolean tellsSex() {
            return look.traits().contains(Sex.VARIABLE);
        }

        /** What was written down but for the sex, which is no observation; empty if there was nothing else. */
        Optional<Observation> observation() {
            Map<String, String> read = new LinkedHashMap<>();
            for (int t = 0; t < states.length; t++) {
                if (!states[t].equals(Lives.NO_CLAIM) && !look.traits().get(t).equals(Sex.VARIABLE)) {
                    read.put(look.traits().get(t), states[t]);
                }
            }
            if (read.isEmpty()) {
                return Optional.empty();
            }
            Observation seen = Observation.of(look.stage(), Phenotype.from(read));
            return Optional.of(look.light().map(seen::in).orElse(seen));
        }
    }

    List<Note> notes(Lives.Life life, boolean founder, Chance chance) {
        List<Note> notes = new ArrayList<>(watches.size());
        for (int i = 0; i < watches.size(); i++) {
            if (watches.get(i).look.whom().include(founder)) {
                watches.get(i).read(life.seen()[i], chance).ifPresent(notes::add);
            }
        }
        return notes;
    }

    List<GenotypeTest> tests(short[] animal, Sex sex, boolean founder, Chance chance) {
        if (assays.isEmpty()) {
            return ImmutableList.of();
        }
        ImmutableList.Builder<GenotypeTest> all = ImmutableList.builder();
        assays.stream()
                .filter(assay -> assay.test.whom().include(founder))
                .forEach(assay -> assay.report(animal, sex, chance).ifPresent(all::add));
        return all.build();
    }

    /** What one state may be recorded as. */
    @SuppressWarnings("ArrayRecordComponent") // a table that is read, never compared
    private record Read(List<String> states, double[] sums) {}

    private static final class Watch {

        private final PlannedLook look;
        private final double share;

        /** By trait, whether it can be told. */
        private final boolean[] told;

        /** By trait, what is recorded instead of a state; only of states that are confused. */
        private final List<Map<String, Read>> confused = new ArrayList<>();

        Watch(Model model, PlannedLook look, Confusions confusions) {
            this.look = look;
            this.share = look.share().toDouble();
            List<String> traits = look.traits();
            this.told = new boolean[traits.size()];
            for (int t = 0; t < told.length; t++) {
                told[t] = told(model, look).contains(traits.get(t));
                confused.add(
                        traits.get(t).equals(Sex.VARIABLE)
                                ? Map.of()
                                : confused(model.states(traits.get(t)), traits.get(t), look, confusions));
            }
        }

        private static Map<String, Read> confused(
                List<String> states, String trait, PlannedLook look, Confusions confusions) {
            Map<String, Read> confused = new HashMap<>();
            for (String shown : states) {
                List<String> read = new ArrayList<>();
                List<Double> chances = new ArrayList<>();
                for (String other : states) {
                    Probability chance = confusions.chance(trait, shown, other, look.stage());
                    if (!chance.isZero()) {
                        read.add(other);
                        chances.add(chance.toDouble());
                    }
                }
                if (!read.equals(List.of(shown))) {
                    double[] weights =
                            chances.stream().mapToDouble(chance -> chance).toArray();
                    confused.put(shown, new Read(read, Chance.sums(weights)));
                }
            }
            return confused;
        }

        /** What is written down; empty if nobody looked or nothing can be told. */
        Optional<Note> read(String[] shown, Chance chance) {
            if (!chance.happens(share)) {
                return Optional.empty();
            }
            String[] read = new String[shown.length];
            boolean anything = false;
            for (int t = 0; t < read.length; t++) {
                read[t] = told[t] ? shown[t] : Lives.NO_CLAIM;
                Read instead = confused.get(t).get(read[t]);
                if (instead != null) {
                    read[t] = instead.states().get(chance.among(instead.sums()));
                }
                anything |= !read[t].equals(Lives.NO_CLAIM);
            }
            return anything ? Optional.of(new Note(look, read)) : Optional.empty();
        }
    }

    private static final class Assay {

        private final Genome genome;
        private final int locus;
        private final double error;
        private final double share;
        private final PlannedTest test;

        Assay(PlannedTest test, Genome genome) {
            this.test = test;
            this.genome = genome;
            this.locus = genome.loci().indexOf(genome.model().locus(test.locus()));
            this.error = test.error().toDouble();
            this.share = test.share().toDouble();
        }

        Optional<GenotypeTest> report(short[] animal, Sex sex, Chance chance) {
            Locus at = genome.loci().get(locus);
            if (at.transmission().strands(sex) == 0 || !chance.happens(share)) {
                return Optional.empty();
            }
            AllelePair pair = genome.pair(animal, locus);
            List<AllelePair> others = new ArrayList<>(at.pairs(sex));
            others.remove(pair);
            boolean wrong = !others.isEmpty() && chance.happens(error);
            return Optional.of(GenotypeTest.of(wrong ? others.get(chance.below(others.size())) : pair, test.error()));
        }
    }
}
