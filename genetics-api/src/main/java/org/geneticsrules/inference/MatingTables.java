package org.geneticsrules.inference;

import com.google.common.primitives.ImmutableDoubleArray;
import com.google.common.primitives.ImmutableIntArray;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What pairs of parents hand down at one unit, or at several looked at together, without what is ruled out of any of the three and without
 * zeros: a pair has few kinds of kits. Families in which the same is ruled out share tables.
 */
final class MatingTables {

    /** So many numbers are kept for families to come; what is more is made anew for each family. */
    private static final int MOST_KEPT = 1 << 21;

    private final List<Heredity> units;

    /** By unit, the tables of sires, dams and kits of one sex. */
    private final List<double[]> daughters;

    private final List<double[]> sons;
    private final Map<ImmutableDoubleArray, Known> known = new HashMap<>();
    private final Map<ImmutableIntArray, Integer> supports = new HashMap<>();
    private final Map<Long, Pairs> pairs = new HashMap<>();
    private int kept;

    /**
     * Prepares tables.
     *
     * @param units the units; a state is one of each, that of the last changing fastest
     */
    MatingTables(List<Heredity> units) {
        this.units = units;
        this.daughters = units.stream().map(one -> one.kits(Sex.FEMALE)).toList();
        this.sons = units.stream().map(one -> one.kits(Sex.MALE)).toList();
    }

    /** Whether daughters inherit otherwise than sons. */
    boolean differ() {
        for (int u = 0; u < units.size(); u++) {
            if (!Arrays.equals(daughters.get(u), sons.get(u))) {
                return true;
            }
        }
        return false;
    }

    /** What weights of all states say; of the same weights the same. */
    Known known(double[] weights) {
        ImmutableDoubleArray key = ImmutableDoubleArray.copyOf(weights);
        Known before = known.get(key);
        if (before == null) {
            before = Known.of(known.size(), weights, this::support);
            known.put(key, before);
        }
        return before;
    }

    private int support(int[] states) {
        return supports.computeIfAbsent(ImmutableIntArray.copyOf(states), key -> supports.size());
    }

    /** The pairs that parents of whom this is known may be. */
    Pairs of(Known sire, Known dam) {
        long key = (long) sire.support() << 32 | dam.support();
        Pairs found = pairs.get(key);
        if (found == null) {
            found = new Pairs(sire.states(), dam.states());
            pairs.put(key, found);
        }
        return found;
    }

    /** Things by small numbers: many are asked for again and again, so that they are not looked for in a map. */
    private static final class Numbered<T> {

        private static final int FEW = 1024;

        private final Map<Integer, T> far = new HashMap<>();
        private @Nullable Object[] near = {};

        @SuppressWarnings("unchecked") // put has put nothing else there
        @Nullable
        T get(int number) {
            return number < near.length ? (T) near[number] : far.get(number);
        }

        void put(int number, T one) {
            if (number < FEW && number >= near.length) {
                near = Arrays.copyOf(near, Math.min(FEW, Math.max(2 * near.length, number + 1)));
            }
            if (number < FEW) {
                near[number] = one;
            } else {
                far.put(number, one);
            }
        }
    }

    private boolean isRoomFor(int numbers) {
        kept += kept < MOST_KEPT ? numbers : 0;
        return kept < MOST_KEPT;
    }

    /** The combinations of a state of a sire and one of a dam, that of the dam changing fastest. */
    final class Pairs {

        private final int[] sireStates;
        private final int[] damStates;
        private final Numbered<Kits> bySupport = new Numbered<>();
        private final Numbered<Leaf> byKnown = new Numbered<>();

        private Pairs(int[] sireStates, int[] damStates) {
            this.sireStates = sireStates;
            this.damStates = damStates;
        }

        int size() {
            return sireStates.length * damStates.length;
        }

        /** The table of kits of a sex of whom this is known. */
        Kits kits(boolean female, Known kit) {
            int key = 2 * kit.support() + (female ? 1 : 0);
            Kits found = bySupport.get(key);
            if (found == null) {
                found = table(female ? Sex.FEMALE : Sex.MALE, kit);
                if (isRoomFor(found.chance().length)) {
                    bySupport.put(key, found);
                }
            }
            return found;
        }

        /** What a kit without young says of its parents. */
        Leaf leaf(boolean female, Known kit) {
            int key = 2 * kit.number() + (female ? 1 : 0);
            Leaf found = byKnown.get(key);
            if (found == null) {
                Kits kits = kits(female, kit);
                double[] likelihoods = new double[size()];
                kits.likelihoods(kit.weights(), 0, likelihoods, 0);
                found = Leaf.of(kits, likelihoods);
                if (isRoomFor(likelihoods.length)) {
                    byKnown.put(key, found);
                }
            }
            return found;
        }

        private Kits table(Sex sex, Known kit) {
            int[][] ofSires = digits(sireStates, Sex.MALE);
            int[][] ofDams = digits(damStates, Sex.FEMALE);
            int[][] ofKits = digits(kit.states(), sex);
            List<double[]> tables = sex == Sex.FEMALE ? daughters : sons;
            int[] starts = new int[size() + 1];
            int[] at = new int[Math.max(16, size())];
            double[] weights = new double[at.length];
            int[] rows = new int[units.size()];
            int next = 0;
            for (int pair = 0; pair < size(); pair++) {
                for (int u = 0; u < rows.length; u++) {
                    int sire = ofSires[u][pair / damStates.length];
                    int dam = ofDams[u][pair % damStates.length];
                    Heredity here = units.get(u);
                    rows[u] = (sire * here.states(Sex.FEMALE) + dam) * here.states(sex);
                }
                for (int i = 0; i < kit.states().length; i++) {
                    double weight = 1;
                    for (int u = 0; u < rows.length && weight > 0; u++) {
                        weight *= tables.get(u)[rows[u] + ofKits[u][i]];
                    }
                    if (weight > 0) {
                        if (next == at.length) {
                            at = Arrays.copyOf(at, 2 * next);
                            weights = Arrays.copyOf(weights, 2 * next);
                        }
                        at[next] = i;
                        weights[next++] = weight;
                    }
                }
                starts[pair + 1] = next;
            }
            return new Kits(starts, Arrays.copyOf(at, next), Arrays.copyOf(weights, next));
        }
    }

    /** By unit, the state at it in each of some states of all. */
    private int[][] digits(int[] states, Sex sex) {
        int[][] digits = new int[units.size()][states.length];
        for (int i = 0; i < states.length; i++) {
            int rest = states[i];
            for (int u = units.size() - 1; u >= 0; u--) {
                int width = units.get(u).states(sex);
                digits[u][i] = rest % width;
                rest /= width;
            }
        }
        return digits;
    }

    /**
     * What a kit without young says of its parents.
     *
     * @param kits its table
     * @param likelihoods for each pair of parents, the chance of what is known of it; null if that is 1 whoever they are
     */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    record Leaf(Kits kits, double @Nullable [] likelihoods) {

        private static final double ROUNDING = 4 * Math.ulp(1.0);

        static Leaf of(Kits kits, double[] likelihoods) {
            for (double likelihood : likelihoods) {
                if (Math.abs(likelihood - 1) > ROUNDING) {
                    return new Leaf(kits, likelihoods);
                }
            }
            return new Leaf(kits, null);
        }
    }

    /**
     * By pair of parents, the states of a kit and their chances: those of a pair are from {@code starts[pair]} up to that of the next.
     */
    @SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
    record Kits(int[] starts, int[] state, double[] chance) {

        /** For each pair of parents, how likely what is known of the kit is. */
        void likelihoods(double[] message, int from, double[] into, int at) {
            int i = 0;
            for (int pair = 0; pair + 1 < starts.length; pair++) {
                double sum = 0;
                for (int end = starts[pair + 1]; i < end; i++) {
                    sum += chance[i] * message[from + state[i]];
                }
                into[at + pair] = sum;
            }
        }

        /** What weights of pairs of parents say of the kit. */
        void kit(double[] pairs, double[] into, int at) {
            int i = 0;
            for (int pair = 0; pair + 1 < starts.length; pair++) {
                double here = pairs[pair];
                for (int end = starts[pair + 1]; i < end; i++) {
                    into[at + state[i]] += here * chance[i];
                }
            }
        }
    }
}
