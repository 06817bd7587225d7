package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Decides whether some of the records of a pedigree can all be true.
 *
 * <p>Frequencies are left out. So whoever stands in for a parent whose record is dropped may be any animal that can live, and to drop a
 * record never makes others contradict one another.
 */
final class Fitting {

    /**
     * What was found of one part of a question: animals at units that have to be looked at together.
     *
     * @param fit whether the records of these animals can all be true
     * @param animals ids of the animals
     * @param core of records that contradict one another, those of animals that were needed to see it; the others may have been needed
     *     too where relations form loops
     */
    record Part(Fit fit, Set<String> animals, BitSet core) {}

    private final CompiledModel compiled;
    private final Pedigree pedigree;
    private final double cells;
    private final Runnable watch;
    private final Groups.Rules rules;
    private final Records records;

    /** Followed in any case, for what is said of no locus: sexes, and looks that no animal can have. */
    private final List<String> anyLocus;

    private final Dossier dossier;
    private final Map<BitSet, Fit> known = new HashMap<>();

    Fitting(Prepared prepared, Pedigree pedigree, Confusions confusions, boolean mutating, Effort effort) {
        this.watch = effort.watch();
        this.compiled = prepared.compiled();
        this.pedigree = pedigree;
        this.cells = effort.cells();
        this.rules = prepared.rules(mutating, false);
        this.anyLocus = compiled.model().loci().keySet().stream().limit(1).toList();
        this.records = prepared.records(confusions);
        this.dossier = new Dossier(pedigree, compiled.model().distinguishesSex() || tellsSex(pedigree));
    }

    private static boolean tellsSex(Pedigree pedigree) {
        return pedigree.individuals().values().stream()
                .flatMap(one -> one.observations().stream())
                .anyMatch(seen -> seen.traits().contains(Sex.VARIABLE));
    }

    Dossier dossier() {
        return dossier;
    }

    /** Whether some records can all be true. */
    Fit of(BitSet kept) {
        Fit before = known.get(kept);
        if (before == null) {
            before = decide(kept);
            known.put((BitSet) kept.clone(), before);
        }
        return before;
    }

    private Fit decide(BitSet kept) {
        Fit all = Fit.FITS;
        for (Part part : parts(kept, true)) {
            if (part.fit() == Fit.CONTRADICTS) {
                return Fit.CONTRADICTS;
            }
            all = part.fit() == Fit.UNDECIDED ? Fit.UNDECIDED : all;
        }
        return all;
    }

    /** The parts of some records that do not fit one another, or of which that is not decided. */
    List<Part> parts(BitSet kept) {
        return parts(kept, false);
    }

    /** The records that show that others contradict one another, if one of these parts shows it. */
    Optional<BitSet> core(BitSet kept) {
        return parts(kept, true).stream()
                .filter(part -> part.fit() == Fit.CONTRADICTS)
                .map(part -> {
                    BitSet core = (BitSet) part.core().clone();
                    core.and(kept);
                    return core;
                })
                .filter(core -> of(core) == Fit.CONTRADICTS)
                .findFirst();
    }

    private List<Part> parts(BitSet kept, boolean firstOnly) {
        watch.run();
        Members members = Members.of(pedigree, Optional.empty(), dossier.keeping(kept));
        watch.run();
        List<Evidence> known = records.of(members);
        Kinds kinds = Kinds.of(compiled.model(), members, known);
        watch.run();
        Families families = Families.of(members, kinds);
        Groups groups =
                new Groups(rules, members, known, kinds, Inference.mattering(compiled.model(), kinds, anyLocus));
        List<Part> parts = new ArrayList<>();
        for (int g = 0; g < groups.count(); g++) {
            watch.run();
            // most parts fit and have no loop, which is seen soonest by peeling them
            Peeled peeled = new Peeled(groups, g, families, cells, Groups.Way.UNIT_BY_UNIT, watch);
            int[] left = IntStream.range(0, known.size())
                    .filter(m -> !peeled.isPossible(m))
                    .toArray();
            if (left.length == 0) {
                continue;
            }
            watch.run();
            Layout layout = groups.layout(g);
            FactorGraph graph = groups.graph(g, layout, left);
            watch.run();
            Whose whose = new Whose(layout, graph.size());
            for (Components.Part part : Components.of(graph)) {
                Part found = part(part, whose, members);
                if (found.fit() != Fit.FITS) {
                    parts.add(found);
                    if (firstOnly && found.fit() == Fit.CONTRADICTS) {
                        return parts;
                    }
                }
            }
        }
        return parts;
    }

    private Part part(Components.Part part, Whose whose, Members members) {
        List<int[]> trail = new ArrayList<>();
        Elimination elimination = Elimination.of(part.graph(), (variable, factor) -> {
            watch.run();
            trail.add(new int[] {variable, factor});
        });
        if (elimination.emptied() >= 0) {
            boolean[] needed = needed(part.graph(), elimination.emptied(), trail);
            return new Part(
                    Fit.CONTRADICTS,
                    animals(part, whose, members, null),
                    dossier.of(animals(part, whose, members, needed)));
        }
        // most records fit, and one way in which they do is found sooner than all ways are ruled out
        Fit fit = cells < 1
                ? Fit.UNDECIDED
                : new Starts(new Narrowed(part.graph(), elimination), new SplittableRandom(0), watch)
                        .any()
                        .fit();
        if (fit == Fit.UNDECIDED) {
            fit = Realisation.of(part.graph(), elimination, cells, watch).fit();
        }
        if (fit == Fit.FITS) {
            return new Part(fit, Set.of(), new BitSet());
        }
        Set<String> animals = animals(part, whose, members, null);
        return new Part(fit, animals, dossier.of(animals));
    }

    /** The variables whose states had to be struck out, one after another, for one to have none left. */
    private static boolean[] needed(FactorGraph graph, int emptied, List<int[]> trail) {
        boolean[] needed = new boolean[graph.size()];
        needed[emptied] = true;
        for (int i = trail.size() - 1; i >= 0; i--) {
            if (needed[trail.get(i)[0]]) {
                for (int variable : graph.factors().get(trail.get(i)[1]).variables()) {
                    needed[variable] = true;
                }
            }
        }
        return needed;
    }

    /** The recorded animals that some variables of a part are of. */
    private static Set<String> animals(Components.Part part, Whose whose, Members members, boolean @Nullable [] only) {
        Set<String> ids = new LinkedHashSet<>();
        for (int v = 0; v < part.variables().length; v++) {
            int member = whose.member(part.variables()[v]);
            if (member >= 0 && (only == null || only[v])) {
                members.all().get(member).recorded().ifPresent(one -> ids.add(one.id()));
            }
        }
        return ids;
    }
}
