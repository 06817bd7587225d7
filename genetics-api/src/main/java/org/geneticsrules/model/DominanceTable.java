package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.jspecify.annotations.Nullable;

/**
 * Decides what every pair of alleles of one locus shows as, by order and by table, and reports pairs decided twice or not at all.
 *
 * <p>A homozygote shows what its allele shows. Two different alleles show what a table entry for the pair says, or what the dominant
 * one shows if a chain of order statements leads from one to the other. Exactly one of the two must decide.
 */
final class DominanceTable {

    /**
     * What a pair shows and why.
     *
     * @param expression one of the declared expressions
     * @param pointers the statements that decide it
     */
    record Decision(String expression, List<String> pointers) {}

    private final LocusBuilder locus;
    private final SymbolIndex symbols;
    private final String pointer;
    private final Map<String, Integer> shownAlone = new LinkedHashMap<>();
    private final Map<Set<String>, Integer> shownPairs = new LinkedHashMap<>();

    DominanceTable(LocusBuilder locus, SymbolIndex symbols) {
        this.locus = locus;
        this.symbols = symbols;
        this.pointer = Pointer.of("loci", locus.id, "dominance");
    }

    /** Decides all pairs; the result is complete only if no problem was added. */
    Map<AllelePair, Decision> decide(Problems problems) {
        index(problems);
        reportCircles(problems);
        Map<AllelePair, Decision> decisions = new LinkedHashMap<>();
        List<Allele> alleles = new ArrayList<>(locus.alleles.values());
        for (int i = 0; i < alleles.size(); i++) {
            for (int j = i; j < alleles.size(); j++) {
                AllelePair pair = new AllelePair(locus.id, alleles, i, j, prefix(alleles.get(i), alleles.get(j)));
                Decision decision = i == j ? homozygote(pair, problems) : heterozygote(pair, problems);
                if (decision != null) {
                    decisions.put(pair, decision);
                }
            }
        }
        return decisions;
    }

    private String prefix(Allele one, Allele other) {
        return symbols.prefix(locus.id, one.symbol(), other.symbol());
    }

    private void index(Problems problems) {
        for (int i = 0; i < locus.shows.size(); i++) {
            ShowsStatement shown = locus.shows.get(i);
            Integer before = shown.second().isEmpty()
                    ? shownAlone.put(shown.first(), i)
                    : shownPairs.put(
                            new LinkedHashSet<>(
                                    List.of(shown.first(), shown.second().get())),
                            i);
            if (before != null || shown.second().equals(Optional.of(shown.first()))) {
                problems.add(
                        "pair-decided-twice",
                        showsPointer(i),
                        "what " + shown.key() + " shows is stated "
                                + (before != null ? "twice" : "as a pair, but both alleles are the same"),
                        "one statement; a homozygote is written as its allele alone");
            }
        }
    }

    private void reportCircles(Problems problems) {
        for (String allele : locus.alleles.keySet()) {
            Optional<List<Integer>> circle = chain(allele, allele);
            if (circle.isPresent()) {
                problems.add(
                        "dominance-circle",
                        pointer + "/order",
                        "the order of dominance at locus " + locus.id + " runs in a circle: "
                                + circle.get().stream()
                                        .map(i -> locus.order.get(i).toString())
                                        .collect(Collectors.joining(", ")));
                return;
            }
        }
    }

    private @Nullable Decision homozygote(AllelePair pair, Problems problems) {
        String allele = pair.first().id();
        Integer shown = shownAlone.get(allele);
        if (shown == null) {
            problems.add(
                    "pair-undecided",
                    pointer + "/shows",
                    "what " + pair + " shows is not stated",
                    "an entry \"" + allele + "\"");
            return null;
        }
        return new Decision(locus.shows.get(shown).expression(), List.of(showsPointer(shown)));
    }

    private @Nullable Decision heterozygote(AllelePair pair, Problems problems) {
        String one = pair.first().id();
        String other = pair.second().id();
        Integer tabled = shownPairs.get(new LinkedHashSet<>(List.of(one, other)));
        Optional<List<Integer>> oneOverOther = chain(one, other);
        Optional<List<Integer>> ordered = oneOverOther.isPresent() ? oneOverOther : chain(other, one);
        if (tabled != null && ordered.isPresent()) {
            problems.add(
                    "pair-decided-twice",
                    showsPointer(tabled),
                    "the pair " + pair + " of locus " + locus.id + " is decided both by this entry and by the order "
                            + ordered.get().stream()
                                    .map(i -> locus.order.get(i).toString())
                                    .collect(Collectors.joining(", ")),
                    "exactly one of the two");
            return null;
        }
        if (tabled != null) {
            return new Decision(locus.shows.get(tabled).expression(), List.of(showsPointer(tabled)));
        }
        if (ordered.isEmpty()) {
            problems.add(
                    "pair-undecided",
                    pointer,
                    "nothing decides what the pair " + pair + " of locus " + locus.id + " shows",
                    "an order such as \"" + one + " > " + other + "\" or an entry \"" + one + "/" + other + "\"");
            return null;
        }
        Integer shown = shownAlone.get(oneOverOther.isPresent() ? one : other);
        if (shown == null) {
            return null; // reported for the homozygote already
        }
        ImmutableList.Builder<String> pointers = ImmutableList.builder();
        pointers.add(showsPointer(shown));
        ordered.get().forEach(i -> pointers.add(pointer + "/order/" + i));
        return new Decision(locus.shows.get(shown).expression(), pointers.build());
    }

    /** Finds the shortest chain of order statements from one allele down to another, by breadth-first search. */
    private Optional<List<Integer>> chain(String from, String to) {
        Map<String, List<Integer>> reached = new LinkedHashMap<>();
        ArrayDeque<String> queue = new ArrayDeque<>(List.of(from));
        while (!queue.isEmpty()) {
            String at = queue.remove();
            List<Integer> soFar = reached.getOrDefault(at, List.of());
            for (int i = 0; i < locus.order.size(); i++) {
                OrderStatement step = locus.order.get(i);
                if (step.dominant().equals(at) && !reached.containsKey(step.recessive())) {
                    List<Integer> path = new ArrayList<>(soFar);
                    path.add(i);
                    if (step.recessive().equals(to)) {
                        return Optional.of(path);
                    }
                    reached.put(step.recessive(), path);
                    queue.add(step.recessive());
                }
            }
        }
        return Optional.empty();
    }

    private String showsPointer(int index) {
        return pointer + Pointer.of("shows", locus.shows.get(index).key());
    }
}
