package org.geneticsrules.inference;

import java.util.Arrays;
import org.geneticsrules.inference.MatingTables.Kits;
import org.geneticsrules.inference.MatingTables.Leaf;
import org.geneticsrules.inference.MatingTables.Pairs;
import org.jspecify.annotations.Nullable;

/**
 * Exact posteriors at one unit, or at several together, where relations form no loop: messages from family to family, up and down (Elston
 * &amp; Stewart 1971, Hum. Hered. 21:523; Cannings, Thompson &amp; Skolnick 1978, Adv. Appl. Probab. 10:26).
 *
 * <p>A family is a pair of parents with all their kits. It hears from each member what all else is known of that one, and tells each what
 * the others say. What a family or an animal tells one of its neighbours is the product of what it heard from all others, taken from
 * products over those before and those after, so that nothing is divided.
 *
 * <p>Only states that an animal's own records leave are looked at. Kits without young that were recorded alike say the same of their
 * parents, and are told the same; those of whom nothing is known say nothing.
 */
final class Peeling {

    private final Runnable watch;
    private final Families families;
    private final Kinds kinds;
    private final MatingTables tables;

    /** By kind, what is known of an animal by itself; null for those of no part that is peeled. */
    private final @Nullable Known[] known;

    /** By kind, whether the table of daughters is its own. */
    private final boolean[] female;

    /** By animal, where its chances begin. */
    private final int[] first;

    private final double[] chances;

    /** By animal through which families are reached, where what is said of it begins. */
    private final int[] at;

    /** Of each such animal, what is known of it by itself and what the families below it say. */
    private final double[] inside;

    /** By family, where what is said of the animal that it is reached through begins. */
    private final int[] atUp;

    /** What each family says of the animal that it is reached through, and later what all others say of that one. */
    private final double[] up;

    /** By family, the pairs that its parents may be. */
    private final Pairs[] pairs;

    /** By run of kits without young, what each of them says of its parents. */
    private final Leaf[] said;

    // room for the pairs of parents of one family, by who says it
    private double[] likelihoods = {};
    private double[] before = {};

    // room for one
    private double[] parents = {};
    private double[] weighed = {};
    private double[] after = {};

    /** Room for an animal through which several families are reached, by family. */
    private double[] products = {};

    /** Who says something in one family: a run of kits without young, or one kit with its bits turned. */
    private int[] speakers = {};

    /** Room for the states of one animal, as of who is most uncertain. */
    private final double[] told;

    private final double[] other;

    private final Weights weights = new Weights();

    /**
     * Prepares a unit for peeling.
     *
     * @param families the shape of the pedigree
     * @param kinds the animals sorted by what is known of them
     * @param tables what parents hand down
     * @param known by kind, what is known of an animal by itself; null for those of no part that is peeled
     * @param female by kind, whether the table of daughters is its own
     * @param peeled by part, whether it is peeled
     * @param watch is called for each family, and may throw
     */
    Peeling(
            Families families,
            Kinds kinds,
            MatingTables tables,
            @Nullable Known[] known,
            boolean[] female,
            boolean[] peeled,
            Runnable watch) {
        this.watch = watch;
        this.families = families;
        this.kinds = kinds;
        this.tables = tables;
        this.known = known;
        this.female = female;
        int animals = families.part.length;
        this.first = new int[animals + 1];
        this.at = new int[animals];
        int rows = 0;
        int widest = 0;
        int room = 0;
        for (int m = 0; m < animals; m++) {
            if (peeled[families.part[m]]) {
                Known one = known(m);
                int left = one.states().length;
                rows += one.width();
                widest = Math.max(widest, left);
                at[m] = room;
                room += families.hasBelow(m) ? left : 0;
            }
            first[m + 1] = rows;
        }
        this.chances = new double[rows];
        this.inside = new double[room];
        this.atUp = new int[families.count() + 1];
        this.pairs = new Pairs[families.count()];
        this.said = new Leaf[families.firstLeaf.length - 1];
        room = 0;
        for (int f = 0; f < families.count(); f++) {
            room += peeled[families.part[families.sires[f]]]
                    ? known(families.entrance[f]).states().length
                    : 0;
            atUp[f + 1] = room;
        }
        this.up = new double[room];
        this.told = new double[widest];
        this.other = new double[widest];
    }

    private Known known(int member) {
        return ofKind(kinds.of(member));
    }

    private Known ofKind(int kind) {
        Known one = known[kind];
        if (one == null) {
            throw new IllegalStateException("animals of kind " + kind + " are of no part that is peeled");
        }
        return one;
    }

    /** The chances of the states of all animals of parts that are settled. */
    ChanceRows chances() {
        return new ChanceRows(first, chances);
    }

    /**
     * Sends all messages of a part.
     *
     * @return the logarithm of its likelihood, but for those of what is known of each animal; negative infinity if it contradicts itself; not
     *     a number if hundreds of records speak against what others demand, which is beyond the range of numbers
     */
    double settle(int part) {
        return weights.settle(() -> send(part));
    }

    private double send(int part) {
        int from = families.firstOfPart[part];
        int to = families.firstOfPart[part + 1];
        for (int f = to - 1; f >= from; f--) {
            watch.run();
            if (!up(f)) {
                return Double.NEGATIVE_INFINITY;
            }
        }
        int root = families.root[part];
        if (families.hasBelow(root)) {
            gather(root);
        }
        Arrays.fill(told, 1);
        double total = conclude(root);
        if (total == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        double found = weights.log() + Math.log(total);
        for (int f = from; f < to; f++) {
            watch.run();
            down(f);
        }
        return found;
    }

    /** A family tells the animal that it is reached through what the others say; false if they contradict one another. */
    private boolean up(int family) {
        int sire = families.sires[family];
        int dam = families.dams[family];
        int entrance = families.entrance[family];
        Known ofSire = known(sire);
        Known ofDam = known(dam);
        Pairs here = tables.of(ofSire, ofDam);
        pairs[family] = here;
        int size = here.size();
        weighed = room(weighed, size);
        double[] product = weighed;
        Arrays.fill(product, 0, size, 1);
        for (int run = families.firstRun[family]; run < families.firstRun[family + 1]; run++) {
            int kind = kinds.of(families.leaves[families.firstLeaf[run]]);
            said[run] = here.leaf(female[kind], ofKind(kind));
            double[] one = said[run].likelihoods();
            if (one != null) {
                for (int k = families.firstLeaf[run]; k < families.firstLeaf[run + 1]; k++) {
                    if (Weights.times(product, 0, one, 0, size)) {
                        weights.note(weights.scale(product, 0, size));
                    }
                }
            }
        }
        likelihoods = room(likelihoods, size);
        for (int k = families.firstGrown[family]; k < families.firstGrown[family + 1]; k++) {
            int kit = families.grown[k];
            gather(kit);
            kits(here, kit).likelihoods(inside, at[kit], likelihoods, 0);
            Weights.times(product, 0, likelihoods, 0, size);
            weights.note(weights.scale(product, 0, size));
        }
        if (sire != entrance && families.hasBelow(sire)) {
            gather(sire);
        }
        if (dam != entrance && families.hasBelow(dam)) {
            gather(dam);
        }
        int to = atUp[family];
        if (entrance == sire) {
            tellSire(product, 0, ofSire.states().length, inside(dam), atInside(dam), ofDam.states().length, up, to);
        } else if (entrance == dam) {
            tellDam(product, 0, ofDam.states().length, inside(sire), atInside(sire), ofSire.states().length, up, to);
        } else {
            weigh(inside(sire), atInside(sire), ofSire, inside(dam), atInside(dam), ofDam, product);
            Arrays.fill(up, to, atUp[family + 1], 0);
            kits(here, entrance).kit(product, up, to);
        }
        double most = weights.scale(up, to, atUp[family + 1] - to);
        weights.note(most);
        return most > 0;
    }

    private Kits kits(Pairs here, int kit) {
        int kind = kinds.of(kit);
        return here.kits(female[kind], ofKind(kind));
    }

    /** What is known of an animal by itself and, if there are any, through the families below it. */
    private double[] inside(int member) {
        return families.hasBelow(member) ? inside : known(member).weights();
    }

    private int atInside(int member) {
        return families.hasBelow(member) ? at[member] : 0;
    }

    /** Puts together what is known of an animal by itself and through the families below it. */
    private void gather(int member) {
        double[] own = known(member).weights();
        int width = own.length;
        int to = at[member];
        System.arraycopy(own, 0, inside, to, width);
        int begin = families.firstBelow[member];
        for (int f = begin; f < families.endBelow[member]; f++) {
            int from = atUp[f];
            for (int s = 0; s < width; s++) {
                inside[to + s] *= up[from + s];
            }
            if (f > begin) {
                weights.note(weights.scale(inside, to, width));
            }
        }
    }

    /**
     * An animal has been told what its family above says. Works out its chances, and what each family below it will hear of it, which takes
     * the place of what that family said.
     *
     * @return the sum of the weights
     */
    private double conclude(int member) {
        Known own = known(member);
        double total = conclude(own, inside(member), atInside(member), first[member]);
        int begin = families.firstBelow[member];
        int end = families.endBelow[member];
        int width = own.weights().length;
        if (begin == end) {
            return total;
        }
        for (int s = 0; s < width; s++) {
            told[s] *= own.weights()[s];
        }
        if (end - begin == 1) {
            System.arraycopy(told, 0, up, atUp[begin], width);
            return total;
        }
        // told becomes the product of all families before one, and other that of all after it
        products = room(products, (end - begin) * width);
        for (int f = begin; f < end; f++) {
            System.arraycopy(told, 0, products, (f - begin) * width, width);
            Weights.times(told, 0, up, atUp[f], width);
            weights.scale(told, 0, width);
        }
        Arrays.fill(other, 0, width, 1);
        for (int f = end - 1; f >= begin; f--) {
            int here = atUp[f];
            for (int s = 0; s < width; s++) {
                double said = up[here + s];
                up[here + s] = products[(f - begin) * width + s] * other[s];
                other[s] *= said;
            }
            weights.scale(up, here, width);
            weights.scale(other, 0, width);
        }
        return total;
    }

    /** Works out chances from what is known of an animal from one side, and what it has been told. */
    private double conclude(Known own, double[] inside, int from, int to) {
        int[] states = own.states();
        double total = 0;
        for (int s = 0; s < states.length; s++) {
            total += told[s] * inside[from + s];
        }
        double share = 1 / total;
        for (int s = 0; s < states.length; s++) {
            int at = to + states[s];
            chances[at] = weights.found(chances[at], told[s] * inside[from + s] * share);
        }
        return total;
    }

    /** A family tells all its members but the one that it is reached through what the others say. */
    private void down(int family) {
        int sire = families.sires[family];
        int dam = families.dams[family];
        int entrance = families.entrance[family];
        Known ofSire = known(sire);
        Known ofDam = known(dam);
        Pairs here = pairs[family];
        int size = here.size();
        double[] fromSire = entrance == sire ? up : inside(sire);
        double[] fromDam = entrance == dam ? up : inside(dam);
        int atSire = entrance == sire ? atUp[family] : atInside(sire);
        int atDam = entrance == dam ? atUp[family] : atInside(dam);
        int speakers = hear(family, here);
        parents = room(parents, size);
        weighed = room(weighed, size);
        Arrays.fill(parents, 0, size, 1);
        weigh(fromSire, atSire, ofSire, fromDam, atDam, ofDam, parents);
        weights.scale(parents, 0, size);
        tellKits(family, here, speakers);
        int all = speakers * size; // where the product over all kits begins
        if (sire != entrance) {
            tellSire(before, all, ofSire.states().length, fromDam, atDam, ofDam.states().length, told, 0);
            weights.scale(told, 0, ofSire.states().length);
            conclude(sire);
        }
        if (dam != entrance) {
            tellDam(before, all, ofDam.states().length, fromSire, atSire, ofSire.states().length, told, 0);
            weights.scale(told, 0, ofDam.states().length);
            conclude(dam);
        }
    }

    /** Takes in what each kit of a family says of its parents, and the products of all before it; returns how many speak. */
    private int hear(int family, Pairs here) {
        int size = here.size();
        int runs = families.firstRun[family];
        int most = families.firstRun[family + 1] - runs + families.firstGrown[family + 1] - families.firstGrown[family];
        speakers = speakers.length <= most ? new int[2 * most + 1] : speakers;
        likelihoods = room(likelihoods, (most + 1) * size);
        before = room(before, (most + 2) * size);
        Arrays.fill(before, 0, size, 1);
        int count = 0;
        for (int run = runs; run < families.firstRun[family + 1]; run++) {
            double[] one = said[run].likelihoods();
            if (one != null) {
                System.arraycopy(one, 0, likelihoods, count * size, size);
                speakers[count] = run;
                count = heard(count, families.firstLeaf[run + 1] - families.firstLeaf[run], size);
            }
        }
        for (int k = families.firstGrown[family]; k < families.firstGrown[family + 1]; k++) {
            int kit = families.grown[k];
            kits(here, kit).likelihoods(inside, at[kit], likelihoods, count * size);
            speakers[count] = ~kit;
            count = heard(count, 1, size);
        }
        int entrance = families.entrance[family];
        if (entrance != families.sires[family] && entrance != families.dams[family]) {
            kits(here, entrance).likelihoods(up, atUp[family], likelihoods, count * size);
            speakers[count] = ~entrance;
            count = heard(count, 1, size);
        }
        return count;
    }

    /** Multiplies what all before one say with what that one says, so many times. */
    private int heard(int speaker, int times, int size) {
        int from = speaker * size;
        int to = from + size;
        System.arraycopy(before, from, before, to, size);
        weights.times(before, to, likelihoods, from, size, times);
        if (speakers[speaker] < 0) {
            weights.scale(before, to, size);
        }
        return speaker + 1;
    }

    private void tellKits(int family, Pairs here, int count) {
        int size = here.size();
        int entrance = families.entrance[family];
        after = room(after, size);
        Arrays.fill(after, 0, size, 1);
        for (int j = count - 1; j >= 0; j--) {
            int run = speakers[j];
            int kit = run >= 0 ? families.leaves[families.firstLeaf[run]] : ~run;
            int alike = run >= 0 ? families.firstLeaf[run + 1] - families.firstLeaf[run] : 1;
            if (kit != entrance) {
                for (int pair = 0; pair < size; pair++) {
                    weighed[pair] = before[j * size + pair] * after[pair] * parents[pair];
                }
                weights.times(weighed, 0, likelihoods, j * size, size, alike - 1);
                if (run >= 0) {
                    tellLeaves(run);
                } else {
                    tell(kits(here, kit), known(kit).states().length);
                    conclude(kit);
                }
            }
            weights.times(after, 0, likelihoods, j * size, size, alike);
            if (run < 0) {
                weights.scale(after, 0, size);
            }
        }
        tellSilent(family, size, count);
    }

    /** Tells the kits that say nothing of their parents what all others say. */
    private void tellSilent(int family, int size, int count) {
        boolean weighing = true;
        for (int run = families.firstRun[family]; run < families.firstRun[family + 1]; run++) {
            if (said[run].likelihoods() != null) {
                continue;
            }
            if (weighing) {
                for (int pair = 0; pair < size; pair++) {
                    weighed[pair] = before[count * size + pair] * parents[pair];
                }
                weighing = false;
            }
            tellLeaves(run);
        }
    }

    /** Tells a kit with so many states what the weights of pairs of parents say of it. */
    private void tell(Kits table, int width) {
        Arrays.fill(told, 0, width, 0);
        table.kit(weighed, told, 0);
        weights.scale(told, 0, width);
    }

    /** Tells the kits of a run what the weights of pairs of parents say of each of them. */
    private void tellLeaves(int run) {
        int kit = families.leaves[families.firstLeaf[run]];
        Known own = known(kit);
        tell(said[run].kits(), own.states().length);
        conclude(own, own.weights(), 0, first[kit]);
        for (int k = families.firstLeaf[run] + 1; k < families.firstLeaf[run + 1]; k++) {
            System.arraycopy(chances, first[kit], chances, first[families.leaves[k]], own.width());
        }
    }

    private static void tellSire(
            double[] pairs, int from, int sires, double[] ofDam, int atDam, int dams, double[] into, int to) {
        int pair = from;
        for (int s = 0; s < sires; s++) {
            double sum = 0;
            for (int d = 0; d < dams; d++) {
                sum += pairs[pair++] * ofDam[atDam + d];
            }
            into[to + s] = sum;
        }
    }

    private static void tellDam(
            double[] pairs, int from, int dams, double[] ofSire, int atSire, int sires, double[] into, int to) {
        Arrays.fill(into, to, to + dams, 0);
        int pair = from;
        for (int s = 0; s < sires; s++) {
            double weight = ofSire[atSire + s];
            for (int d = 0; d < dams; d++) {
                into[to + d] += pairs[pair++] * weight;
            }
        }
    }

    /** Multiplies weights of pairs of parents by what is known of the two. */
    private static void weigh(
            double[] ofSire, int atSire, Known sire, double[] ofDam, int atDam, Known dam, double[] pairs) {
        int sires = sire.states().length;
        int dams = dam.states().length;
        int pair = 0;
        for (int s = 0; s < sires; s++) {
            double weight = ofSire[atSire + s];
            for (int d = 0; d < dams; d++) {
                pairs[pair++] *= weight * ofDam[atDam + d];
            }
        }
    }

    private static double[] room(double[] now, int numbers) {
        return now.length < numbers ? new double[Math.max(numbers, 2 * now.length)] : now;
    }
}
