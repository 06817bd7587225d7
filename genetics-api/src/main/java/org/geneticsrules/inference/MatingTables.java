package org.geneticsrules.inference;

import com.google.common.primitives.ImmutableDoubleArray;
import com.google.common.primitives.ImmutableIntArray;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What pairs of parents hand down at one unit, without what is ruled out of any of the three and without zeros: a pair has few kinds of
 * kits. Families in which the same is ruled out share tables.
 */
final class MatingTables {

    /** So many numbers are kept for families to come; what is more is made anew for each family. */
    private static final int MOST_KEPT = 1 << 21;

    private final double[] daughters;
    private final double[] sons;
    private final int dams;
    private final Map<ImmutableDoubleArray, Known> known = new HashMap<>();
    private final Map<ImmutableIntArray, Integer> supports = new HashMap<>();
    private final Map<Long, Pairs> pairs = new HashMap<>();
    private int kept;

    MatingTables(Heredity heredity) {
        this.daughters = heredity.kits(Sex.FEMALE);
        this.sons = heredity.kits(Sex.MALE);
        this.dams = heredity.states(Sex.FEMALE);
    }

    /** Whether daughters inherit otherwise than sons. */
    boolean differ() {
        return !Arrays.equals(daughters, sons);
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

    private boolean isRoomFor(int numbers) {
        kept += kept < MOST_KEPT ? numbers : 0;
        return kept < MOST_KEPT;
    }

    /** The combinations of a state of a sire and one of a dam, that of the dam changing fastest. */
    final class Pairs {

        private final int[] sireStates;
        private final int[] damStates;
        private final Map<Integer, Kits> bySupport = new HashMap<>();
        private final Map<Integer, Leaf> byKnown = new HashMap<>();

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
                found = table(female ? daughters : sons, kit);
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

        private Kits table(double[] whole, Known kit) {
            int[] place = new int[kit.width()];
            Arrays.fill(place, -1);
            for (int i = 0; i < kit.states().length; i++) {
                place[kit.states()[i]] = i;
            }
            int[] starts = new int[size() + 1];
            int[] at = new int[size() * kit.states().length];
            double[] weights = new double[at.length];
            int next = 0;
            for (int pair = 0; pair < size(); pair++) {
                int row =
                        (sireStates[pair / damStates.length] * dams + damStates[pair % damStates.length]) * kit.width();
                for (int i = 0; i < kit.states().length; i++) {
                    double weight = whole[row + kit.states()[i]];
                    if (weight > 0) {
                        at[next] = i;
                        weights[next++] = weight;
                    }
                }
                starts[pair + 1] = next;
            }
            return new Kits(starts, Arrays.copyOf(at, next), Arrays.copyOf(weights, next));
        }
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
