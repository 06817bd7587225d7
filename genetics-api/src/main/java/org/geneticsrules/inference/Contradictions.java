package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Which records of a pedigree contradict one another under a model, and which to look at again.
 *
 * <p>Whether records contradict one another does not depend on frequencies, and mutation is left out unless it was asked for ({@link
 * Inference#withMutation}); naming errors count as far as they are named. A record that is left out is no evidence; a parent whose record
 * is left out is an animal of whom nothing is known.
 *
 * <p>An irreducible set is found in the neighbourhood in which genotype elimination came to an end, so that a large registry is gone
 * through once and not once for each record.
 *
 * <p>Immutable and thread-safe.
 */
public final class Contradictions {

    /** After so many questions about all records of a kindred the search for the fewest to look at again is given up. */
    private static final int MOST_STEPS = 2000;

    private final Supplier<Fitting> fresh;
    private final List<List<String>> kindreds = new ArrayList<>();

    /** For each kindred with contradictions, those that were found. */
    private final List<List<BitSet>> found = new ArrayList<>();

    private final List<Contradiction> all;
    private final Set<String> undecided;

    private Contradictions(Supplier<Fitting> fresh) {
        this.fresh = fresh;
        Fitting fitting = fresh.get();
        Dossier dossier = fitting.dossier();
        Shrinking shrinking = new Shrinking(fitting);
        Set<String> open = new LinkedHashSet<>();
        ImmutableList.Builder<Contradiction> told = ImmutableList.builder();
        List<Fitting.Part> parts = fitting.parts(dossier.all());
        for (List<String> kindred : parts.isEmpty() ? List.<List<String>>of() : dossier.kindreds()) {
            Set<String> ids = new LinkedHashSet<>(kindred);
            Set<BitSet> sets = new LinkedHashSet<>();
            for (Fitting.Part part : parts) {
                if (ids.contains(part.animals().iterator().next())) {
                    Optional<BitSet> set =
                            part.fit() == Fit.UNDECIDED ? Optional.empty() : shrunk(shrinking, dossier, part);
                    set.ifPresentOrElse(sets::add, () -> open.addAll(part.animals()));
                }
            }
            if (!sets.isEmpty()) {
                List<BitSet> settled = new ArrayList<>(sets);
                Optional<BitSet> smallest = smallest(shrinking, dossier.of(kindred), settled);
                smallest.ifPresent(one -> replace(settled, one));
                settled.forEach(set -> told.add(new Contradiction(
                        dossier.refs(set),
                        smallest.filter(one -> one.cardinality() == set.cardinality())
                                .isPresent())));
                kindreds.add(kindred);
                found.add(settled);
            }
        }
        this.all = told.build();
        this.undecided = ImmutableSet.copyOf(open);
    }

    static Contradictions of(Supplier<Fitting> fresh) {
        return new Contradictions(fresh);
    }

    private static Optional<BitSet> shrunk(Shrinking shrinking, Dossier dossier, Fitting.Part part) {
        return shrinking.irreducible(part.core()).or(() -> shrinking.irreducible(dossier.of(part.animals())));
    }

    private static Optional<BitSet> smallest(Shrinking shrinking, BitSet all, List<BitSet> known) {
        Optional<BitSet> single =
                known.stream().filter(set -> set.cardinality() == 1).findFirst();
        return single.isPresent() ? single : shrinking.smallest(all);
    }

    /** Puts a smallest set in the place of the one it has most in common with, unless one is as small. */
    private static void replace(List<BitSet> sets, BitSet smallest) {
        int best = 0;
        int most = -1;
        for (int i = 0; i < sets.size(); i++) {
            if (sets.get(i).cardinality() == smallest.cardinality()) {
                return;
            }
            BitSet common = (BitSet) sets.get(i).clone();
            common.and(smallest);
            if (common.cardinality() > most) {
                most = common.cardinality();
                best = i;
            }
        }
        sets.set(best, smallest);
    }

    /**
     * Returns the contradictions: for each part of the question that is contradictory one irreducible set, each set once. There may be
     * more, which come to light when these are resolved; {@link #fewestToRecheck} takes all into account.
     *
     * @return sets of records that cannot all be true, in the order of the pedigree
     */
    public List<Contradiction> all() {
        return all;
    }

    /**
     * Returns the animals for whom it is not decided whether their records contradict one another, or which ones do, because that would take
     * more room than allowed ({@link Inference#within}).
     *
     * @return ids; none if all is decided
     */
    public Set<String> undecided() {
        return undecided;
    }

    /**
     * Tells whether all records can be true.
     *
     * @return true if it is proven that they can
     */
    public boolean isConsistent() {
        return all.isEmpty() && undecided.isEmpty();
    }

    /**
     * Finds the fewest records to look at again, for each set of relatives whose records contradict one another. Take one set of each, leave
     * its records out, and all others fit.
     *
     * @param most how many sets of equal size to list for each, at least 1
     * @return one for each set of relatives with contradictions, in the order of the pedigree
     * @throws IllegalArgumentException if none are to be listed
     */
    public List<FewestToRecheck> fewestToRecheck(int most) {
        if (most < 1) {
            throw new IllegalArgumentException("at least one set has to be listed, but " + most + " were asked for");
        }
        ImmutableList.Builder<FewestToRecheck> each = ImmutableList.builder();
        for (int k = 0; k < kindreds.size(); k++) {
            each.add(fewest(fresh.get(), kindreds.get(k), new ArrayList<>(found.get(k)), most));
        }
        return each.build();
    }

    /**
     * A set without which all fits has a record in common with each contradiction. So the smallest such sets are tried; what still
     * contradicts itself without one of them is a contradiction more.
     */
    private static FewestToRecheck fewest(Fitting fitting, List<String> kindred, List<BitSet> known, int most) {
        Dossier dossier = fitting.dossier();
        Shrinking shrinking = new Shrinking(fitting);
        BitSet records = dossier.of(kindred);
        int steps = 0;
        while (true) {
            HittingSets hitting = HittingSets.of(known, most);
            int size = hitting.size();
            if (hitting.isGivenUp()) {
                return new FewestToRecheck(kindred, List.of(), false, size);
            }
            boolean learned = false;
            for (BitSet set : hitting.found()) {
                BitSet rest = (BitSet) records.clone();
                rest.andNot(set);
                Fit fit = fitting.of(rest);
                if (fit == Fit.CONTRADICTS) {
                    Optional<BitSet> another =
                            fitting.core(rest).flatMap(shrinking::irreducible).or(() -> shrinking.irreducible(rest));
                    if (another.isPresent()) {
                        known.add(another.get());
                        learned = true;
                        break;
                    }
                }
                if (fit != Fit.FITS || ++steps > MOST_STEPS) {
                    return new FewestToRecheck(kindred, List.of(), false, size);
                }
            }
            if (!learned) {
                return new FewestToRecheck(
                        kindred, hitting.found().stream().map(dossier::refs).toList(), hitting.more(), size);
            }
        }
    }
}
