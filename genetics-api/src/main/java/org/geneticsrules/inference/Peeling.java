package org.geneticsrules.inference;

import java.util.Arrays;
import org.geneticsrules.inference.MatingTables.Leaf;
import org.geneticsrules.inference.MatingTables.Pairs;
import org.jspecify.annotations.Nullable;

/**
 * Exact posteriors at one unit, or at several together, where relations form no loop: messages from family to family, up and down (Elston &amp; Stewart 1971, Hum.
 * Hered. 21:523; Cannings, Thompson &amp; Skolnick 1978, Adv. Appl. Probab. 10:26).
 *
 * <p>A family is a pair of parents with all their kits. It hears from each member what all else is known of that one, and tells each what
 * the others say. What a family or an animal tells one of its neighbours is the product of what it heard from all others, taken from
 * products over those before and those after, so that nothing is divided.
 *
 * <p>Only states that an animal's own records leave are looked at. Kits without young say the same of their parents wherever the same is
 * known of all three, and those of whom nothing is known say nothing.
 */
final class Peeling {

    /** A product is scaled after so many factors, so that those of large families do not underflow. */
    private static final int OFTEN = 8;

    /** Scales are multiplied until they are below this, so that logarithms are few. */
    private static final double FAR = 1e-150;

    /** How many kits before one are looked through for one of the same kind. */
    private static final int LOOK_BACK = 16;

    private final Families families;
    private final MatingTables tables;

    /** By animal, what is known of it by itself. */
    private final @Nullable Known[] known;

    private final boolean[] female;

    /** By animal, what the families below it say with what is known of it, and later what the family above it says. */
    private final double[] messages;

    /** By family, what it says of the animal that it is reached through. */
    private final double[] up;

    /** The most states that are left of any animal. */
    private final int widest;

    /** By animal, where its chances begin. */
    private final int[] first;

    private final double[] chances;

    /** What is known of the animal that a family is reached through, from all but that family. */
    private final double[] entering;

    private final double[] told;
    private final double[] ending;

    // room for the pairs of parents of one family
    private double[] product = {};
    private double[] likelihoods = {};
    private double[] weighed = {};
    private double[] parents = {};
    private double[] after = {};

    /** The kits of one family that say something of their parents, and what they say; nothing for those with young. */
    private int[] telling = {};

    private @Nullable Leaf[] leaves = {};

    private double log;
    private double scales;

    /**
     * Prepares a unit for peeling.
     *
     * @param families the shape of the pedigree
     * @param tables what parents hand down
     * @param known by animal, what is known of it by itself; null for animals of parts that are not peeled
     * @param female by animal, whether the table of daughters is its own
     */
    Peeling(Families families, MatingTables tables, @Nullable Known[] known, boolean[] female) {
        this.families = families;
        this.tables = tables;
        this.known = known;
        this.female = female;
        this.first = new int[known.length + 1];
        int most = 0;
        for (int m = 0; m < known.length; m++) {
            Known one = known[m];
            first[m + 1] = first[m] + (one == null ? 0 : one.width());
            most = one == null ? most : Math.max(most, one.states().length);
        }
        this.widest = most;
        this.chances = new double[first[known.length]];
        this.messages = new double[known.length * widest];
        this.up = new double[families.sires.length * widest];
        this.entering = new double[widest];
        this.told = new double[widest];
        this.ending = new double[widest];
    }

    private Known known(int member) {
        Known one = known[member];
        if (one == null) {
            throw new IllegalStateException("animal " + member + " is of a part that is not peeled");
        }
        return one;
    }

    /** The combinations in the tables of the largest family of a part, of which there is one at a time. */
    double cells(int part) {
        double most = 0;
        for (int i = families.firstOrdered[part]; i < families.firstOrdered[part + 1]; i++) {
            int f = families.ordered[i];
            most = Math.max(
                    most,
                    (double) known(families.sires[f]).states().length
                            * known(families.dams[f]).states().length
                            * (families.firstKit[f + 1] - families.firstKit[f] + 1));
        }
        return most;
    }

    /** The chances of the states of an animal. */
    double[] chances(int member) {
        return Arrays.copyOfRange(chances, first[member], first[member + 1]);
    }

    /**
     * Sends all messages of a part.
     *
     * @return the logarithm of its likelihood, but for those of what is known of each animal; negative infinity if it contradicts itself
     */
    double settle(int part) {
        log = 0;
        scales = 1;
        int from = families.firstOrdered[part];
        int to = families.firstOrdered[part + 1];
        for (int i = to - 1; i >= from; i--) {
            if (!up(families.ordered[i])) {
                return Double.NEGATIVE_INFINITY;
            }
        }
        int root = families.root[part];
        Arrays.fill(messages, root * widest, (root + 1) * widest, 1);
        double total = finish(root);
        if (total == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        double found = log + Math.log(scales) + Math.log(total);
        for (int i = from; i < to; i++) {
            down(families.ordered[i]);
        }
        return found;
    }

    /** A family tells the animal that it is reached through what the others say; false if they contradict one another. */
    private boolean up(int family) {
        int sire = families.sires[family];
        int dam = families.dams[family];
        int entrance = families.entrance[family];
        Pairs pairs = tables.of(known(sire), known(dam));
        int size = pairs.size();
        product = room(product, size);
        likelihoods = room(likelihoods, size);
        Arrays.fill(product, 0, size, 1);
        int multiplied = 0;
        for (int k = families.firstKit[family]; k < families.firstKit[family + 1]; k++) {
            int kit = families.kits[k];
            if (kit == entrance) {
                continue;
            }
            double[] one;
            if (families.isLeaf(kit)) {
                one = pairs.leaf(female[kit], known(kit)).likelihoods();
                if (one == null) {
                    continue;
                }
            } else {
                gather(kit, family, messages, kit * widest);
                pairs.kits(female[kit], known(kit)).likelihoods(messages, kit * widest, likelihoods, 0);
                one = likelihoods;
            }
            for (int pair = 0; pair < size; pair++) {
                product[pair] *= one[pair];
            }
            if (++multiplied % OFTEN == 0) {
                note(scale(product, 0, size));
            }
        }
        int at = family * widest;
        if (sire != entrance) {
            gather(sire, family, messages, sire * widest);
        }
        if (dam != entrance) {
            gather(dam, family, messages, dam * widest);
        }
        if (entrance == sire) {
            tellSire(product, 0, known(sire), known(dam), messages, dam * widest, up, at);
        } else if (entrance == dam) {
            tellDam(product, 0, known(sire), known(dam), messages, sire * widest, up, at);
        } else {
            weighed = room(weighed, size);
            weigh(known(sire), messages, sire * widest, known(dam), messages, dam * widest, weighed);
            for (int pair = 0; pair < size; pair++) {
                weighed[pair] *= product[pair];
            }
            Arrays.fill(up, at, at + widest, 0);
            pairs.kits(female[entrance], known(entrance)).kit(weighed, up, at);
        }
        double most = scale(up, at, known(entrance).states().length);
        note(most);
        return most > 0;
    }

    /** What is known of an animal by itself and through the families below it, but for one family. */
    private void gather(int member, int except, double[] into, int at) {
        Known own = known(member);
        System.arraycopy(own.weights(), 0, into, at, own.weights().length);
        timesBelow(member, except, into, at);
    }

    private void timesBelow(int member, int except, double[] into, int at) {
        int width = known(member).states().length;
        int multiplied = 0;
        for (int i = families.firstFamily[member]; i < families.firstFamily[member + 1]; i++) {
            int family = families.familiesOf[i];
            if (family != except && families.entrance[family] == member) {
                int from = family * widest;
                for (int s = 0; s < width; s++) {
                    into[at + s] *= up[from + s];
                }
                if (++multiplied % OFTEN == 0) {
                    note(scale(into, at, width));
                }
            }
        }
    }

    /** A family tells all its members but the one that it is reached through what the others say. */
    private void down(int family) {
        int sire = families.sires[family];
        int dam = families.dams[family];
        int entrance = families.entrance[family];
        Known ofSire = known(sire);
        Known ofDam = known(dam);
        Pairs pairs = tables.of(ofSire, ofDam);
        int size = pairs.size();
        int width = known(entrance).states().length;
        gather(entrance, family, entering, 0);
        for (int s = 0; s < width; s++) {
            entering[s] *= messages[entrance * widest + s];
        }
        int count = multiply(family, pairs);
        int all = count * size; // where the product over all kits begins
        double[] fromSire = entrance == sire ? entering : messages;
        double[] fromDam = entrance == dam ? entering : messages;
        int atSire = entrance == sire ? 0 : sire * widest;
        int atDam = entrance == dam ? 0 : dam * widest;
        parents = room(parents, size);
        weighed = room(weighed, size);
        after = room(after, size);
        weigh(ofSire, fromSire, atSire, ofDam, fromDam, atDam, parents);
        tellKits(family, pairs, count);
        // both parents are told before what either said is overwritten
        if (dam != entrance) {
            tellDam(product, all, ofSire, ofDam, fromSire, atSire, told, 0);
        }
        if (sire != entrance) {
            tellSire(product, all, ofSire, ofDam, fromDam, atDam, messages, sire * widest);
            scale(messages, sire * widest, ofSire.states().length);
            finish(sire);
        }
        if (dam != entrance) {
            System.arraycopy(told, 0, messages, dam * widest, ofDam.states().length);
            scale(messages, dam * widest, ofDam.states().length);
            finish(dam);
        }
    }

    /** Multiplies what the kits of a family say, one after another, and returns how many say something. */
    private int multiply(int family, Pairs pairs) {
        int size = pairs.size();
        int kits = families.firstKit[family + 1] - families.firstKit[family];
        if (telling.length < kits) {
            telling = new int[2 * kits];
            leaves = new Leaf[2 * kits];
        }
        product = room(product, (kits + 1) * size);
        likelihoods = room(likelihoods, kits * size);
        Arrays.fill(product, 0, size, 1);
        int count = 0;
        for (int k = families.firstKit[family]; k < families.firstKit[family + 1]; k++) {
            int kit = families.kits[k];
            Known own = known(kit);
            Leaf leaf = families.isLeaf(kit) && kit != families.entrance[family] ? pairs.leaf(female[kit], own) : null;
            double[] one = likelihoods;
            int at = count * size;
            if (leaf == null) {
                boolean enters = kit == families.entrance[family];
                pairs.kits(female[kit], own)
                        .likelihoods(enters ? entering : messages, enters ? 0 : kit * widest, likelihoods, at);
            } else if (leaf.likelihoods() == null) {
                continue;
            } else {
                System.arraycopy(leaf.likelihoods(), 0, likelihoods, at, size);
            }
            for (int pair = 0; pair < size; pair++) {
                product[at + size + pair] = product[at + pair] * one[at + pair];
            }
            telling[count] = kit;
            leaves[count] = leaf;
            if (++count % OFTEN == 0) {
                scale(product, count * size, size);
            }
        }
        return count;
    }

    private void tellKits(int family, Pairs pairs, int count) {
        int size = pairs.size();
        int entrance = families.entrance[family];
        Arrays.fill(after, 0, size, 1);
        for (int j = count - 1; j >= 0; j--) {
            int kit = telling[j];
            Leaf leaf = leaves[j];
            int alike = leaf == null ? -1 : alike(kit, j + 1, count);
            if (alike >= 0) {
                copy(telling[alike], kit);
            } else if (kit != entrance) {
                for (int pair = 0; pair < size; pair++) {
                    weighed[pair] = product[j * size + pair] * after[pair] * parents[pair];
                }
                tellKit(leaf == null ? pairs.kits(female[kit], known(kit)) : leaf.kits(), kit);
            }
            for (int pair = 0; pair < size; pair++) {
                after[pair] *= likelihoods[j * size + pair];
            }
            if ((count - j) % OFTEN == 0) {
                scale(after, 0, size);
            }
        }
        tellSilent(family, pairs, count);
    }

    /** Tells the kits that say nothing of their parents what all others say. */
    private void tellSilent(int family, Pairs pairs, int count) {
        int size = pairs.size();
        int before = -1;
        for (int k = families.firstKit[family]; k < families.firstKit[family + 1]; k++) {
            int kit = families.kits[k];
            if (kit == families.entrance[family] || !families.isLeaf(kit)) {
                continue;
            }
            Leaf leaf = pairs.leaf(female[kit], known(kit));
            if (leaf.likelihoods() != null) {
                continue;
            }
            if (before >= 0 && areAlike(before, kit)) {
                copy(before, kit);
            } else {
                for (int pair = 0; pair < size; pair++) {
                    weighed[pair] = product[count * size + pair] * parents[pair];
                }
                tellKit(leaf.kits(), kit);
            }
            before = kit;
        }
    }

    /** A kit without young among some of those that say something, of which the same is known. */
    private int alike(int kit, int from, int count) {
        for (int j = from; j < Math.min(count, from + LOOK_BACK); j++) {
            if (leaves[j] != null && areAlike(telling[j], kit)) {
                return j;
            }
        }
        return -1;
    }

    private boolean areAlike(int kit, int other) {
        return female[kit] == female[other]
                && known(kit).number() == known(other).number();
    }

    private void copy(int from, int to) {
        System.arraycopy(chances, first[from], chances, first[to], first[from + 1] - first[from]);
    }

    private void tellKit(MatingTables.Kits kits, int kit) {
        int at = kit * widest;
        Arrays.fill(messages, at, at + widest, 0);
        kits.kit(weighed, messages, at);
        scale(messages, at, known(kit).states().length);
        finish(kit);
    }

    private static void tellSire(
            double[] pairs, int from, Known sire, Known dam, double[] ofDam, int atDam, double[] into, int at) {
        int dams = dam.states().length;
        for (int s = 0; s < sire.states().length; s++) {
            double sum = 0;
            for (int d = 0; d < dams; d++) {
                sum += pairs[from + s * dams + d] * ofDam[atDam + d];
            }
            into[at + s] = sum;
        }
    }

    private static void tellDam(
            double[] pairs, int from, Known sire, Known dam, double[] ofSire, int atSire, double[] into, int at) {
        int dams = dam.states().length;
        Arrays.fill(into, at, at + dams, 0);
        for (int s = 0; s < sire.states().length; s++) {
            double weight = ofSire[atSire + s];
            for (int d = 0; d < dams; d++) {
                into[at + d] += pairs[from + s * dams + d] * weight;
            }
        }
    }

    /** What is known of each pair of parents by what is known of the two. */
    private static void weigh(
            Known sire, double[] ofSire, int atSire, Known dam, double[] ofDam, int atDam, double[] into) {
        int dams = dam.states().length;
        for (int s = 0; s < sire.states().length; s++) {
            double weight = ofSire[atSire + s];
            for (int d = 0; d < dams; d++) {
                into[s * dams + d] = weight * ofDam[atDam + d];
            }
        }
    }

    /** Works out the chances of an animal that has heard from all its families, and returns the sum of the weights. */
    private double finish(int member) {
        Known own = known(member);
        int width = own.states().length;
        gather(member, -1, ending, 0);
        double total = 0;
        for (int s = 0; s < width; s++) {
            ending[s] *= messages[member * widest + s];
            total += ending[s];
        }
        for (int s = 0; s < width; s++) {
            chances[first[member] + own.states()[s]] = ending[s] / total;
        }
        return total;
    }

    private static double[] room(double[] now, int numbers) {
        return now.length < numbers ? new double[Math.max(numbers, 2 * now.length)] : now;
    }

    private void note(double scale) {
        if (scale < FAR || scales < FAR) {
            log += Math.log(scale) + Math.log(scales);
            scales = 1;
        } else {
            scales *= scale;
        }
    }

    /** Divides by the largest weight, and returns it; 0 if there is none. */
    private static double scale(double[] weights, int from, int count) {
        double most = 0;
        for (int i = from; i < from + count; i++) {
            most = Math.max(most, weights[i]);
        }
        if (most > 0 && most != 1) {
            for (int i = from; i < from + count; i++) {
                weights[i] /= most;
            }
        }
        return most;
    }
}
