package org.geneticsrules.comparison;

import com.google.common.primitives.Ints;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Links;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;

/**
 * A {@linkplain Kindreds kindred} as it is compared: its founders, and its litters in turn.
 *
 * @param founders those who come from no recorded litter, in the order stated
 * @param litters positions of its litters, in the order in which they are looked at
 * @param turns for each of them, its turn among the litters of all kindreds
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Kindred(List<Individual> founders, int[] litters, int[] turns) {

    /**
     * Takes records apart.
     *
     * @param pedigree records
     * @param order positions of its litters in the order in which they are looked at
     * @return the kindreds that have litters, in the order of their first ones
     */
    static List<Kindred> of(Pedigree pedigree, int[] order) {
        Links links = pedigree.links();
        Kindreds apart = Kindreds.of(pedigree);
        int[] number = new int[apart.count()];
        Arrays.fill(number, Links.NONE);
        List<List<Individual>> founders = new ArrayList<>();
        List<List<Integer>> litters = new ArrayList<>();
        List<List<Integer>> turns = new ArrayList<>();
        for (int turn = 0; turn < order.length; turn++) {
            int litter = order[turn];
            int kindred = apart.ofLitter(litter);
            if (kindred == Links.NONE) {
                continue; // neither a parent nor a kit is recorded
            }
            if (number[kindred] == Links.NONE) {
                number[kindred] = founders.size();
                founders.add(new ArrayList<>());
                litters.add(new ArrayList<>());
                turns.add(new ArrayList<>());
            }
            litters.get(number[kindred]).add(litter);
            turns.get(number[kindred]).add(turn);
        }
        for (int one = 0; one < links.count(); one++) {
            int of = number[apart.of(one)];
            if ((of != Links.NONE) && (links.litterOf(one) == Links.NONE)) {
                founders.get(of).add(pedigree.individualAt(one));
            }
        }
        List<Kindred> kindreds = new ArrayList<>();
        for (int k = 0; k < founders.size(); k++) {
            kindreds.add(new Kindred(
                    List.copyOf(founders.get(k)), Ints.toArray(litters.get(k)), Ints.toArray(turns.get(k))));
        }
        return kindreds;
    }

    /**
     * Puts litters into the order in which they are looked at: by date of birth where all dates are recorded, else as they were stated; and
     * in any case after those that their parents come from.
     *
     * @param pedigree records
     * @return positions of all litters
     */
    static int[] order(Pedigree pedigree) {
        int count = pedigree.litters().size();
        Integer[] wished = new Integer[count];
        Arrays.setAll(wished, at -> at);
        if (pedigree.litters().values().stream()
                .allMatch(litter -> litter.born().isPresent())) {
            Arrays.sort(wished, Comparator.comparing(at -> born(pedigree, at)));
        }
        Links links = pedigree.links();
        int[] order = new int[count];
        boolean[] put = new boolean[count];
        int size = 0;
        List<Integer> waiting = new ArrayList<>();
        for (int first : wished) {
            waiting.add(first);
            while (!waiting.isEmpty()) {
                int litter = waiting.get(waiting.size() - 1);
                int before = put[litter] ? Links.NONE : before(links, litter, put);
                if (before != Links.NONE) {
                    waiting.add(before);
                    continue;
                }
                waiting.remove(waiting.size() - 1);
                if (!put[litter]) {
                    put[litter] = true;
                    order[size++] = litter;
                }
            }
        }
        return order;
    }

    private static LocalDate born(Pedigree pedigree, int litter) {
        return pedigree.litterAt(litter).born().orElseThrow();
    }

    /** A litter that a parent of this one comes from and that does not stand in the order yet. */
    private static int before(Links links, int litter, boolean[] put) {
        if (links.dam(litter) != Links.NONE) {
            int of = links.litterOf(links.dam(litter));
            if ((of != Links.NONE) && !put[of]) {
                return of;
            }
        }
        for (int m = 0; m < links.males(litter); m++) {
            int of = links.litterOf(links.male(litter, m));
            if ((of != Links.NONE) && !put[of]) {
                return of;
            }
        }
        return Links.NONE;
    }

    /** Whether all litters are of the same two recorded founders. */
    boolean isCouple(Pedigree pedigree) {
        return sire(pedigree).isPresent() && dam(pedigree).isPresent();
    }

    /** The sire, if all litters are of the same two recorded founders. */
    Optional<Individual> sire(Pedigree pedigree) {
        return founders.size() == 2 ? founder(pedigree, true) : Optional.empty();
    }

    /** The dam, if all litters are of the same two recorded founders. */
    Optional<Individual> dam(Pedigree pedigree) {
        return founders.size() == 2 ? founder(pedigree, false) : Optional.empty();
    }

    private Optional<Individual> founder(Pedigree pedigree, boolean sire) {
        String found = "";
        for (int at : litters) {
            Litter litter = pedigree.litterAt(at);
            if (litter.dam().isEmpty() || !(litter.sires() instanceof Paternity.Known known)) {
                return Optional.empty();
            }
            String id = sire ? known.sire() : litter.dam().get();
            if (!found.isEmpty() && !found.equals(id)) {
                return Optional.empty();
            }
            found = id;
        }
        String id = found;
        return founders.stream().filter(one -> one.id().equals(id)).findFirst();
    }

    /** The kindred without the records of one founder. */
    Kindred blank(Individual founder) {
        return new Kindred(
                founders.stream()
                        .map(one -> one.id().equals(founder.id()) ? unrecorded(one) : one)
                        .toList(),
                litters,
                turns);
    }

    private static Individual unrecorded(Individual founder) {
        Individual bare = Individual.of(founder.id());
        Individual sexed = founder.sex().map(bare::with).orElse(bare);
        return founder.population().map(sexed::from).orElse(sexed);
    }
}
