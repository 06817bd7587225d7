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
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Sex;
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
    private final DominanceBuilder stated;
    private final Transmission transmission;
    private final SymbolIndex symbols;
    private final String pointer;
    private final Map<String, Integer> shownAlone = new LinkedHashMap<>();
    private final Map<Set<String>, Integer> shownPairs = new LinkedHashMap<>();

    DominanceTable(LocusBuilder locus, Sex sex, Transmission transmission, SymbolIndex symbols) {
        this.locus = locus;
        this.stated = locus.dominance(sex);
        this.transmission = transmission;
        this.symbols = symbols;
        this.pointer = locus.dominancePointer(sex);
    }

    /** Decides all genotypes that the way of transmission allows; the result is complete only if no problem was added. */
    Map<AllelePair, Decision> decide(Problems problems) {
        index(problems);
        reportCircles(problems);
        Map<AllelePair, Decision> decisions = new LinkedHashMap<>();
        for (AllelePair pair : genotypes()) {
            Decision decision = switch (pair.alleles().size()) {
                case 2 -> pair.isHomozygous() ? homozygote(pair, problems) : heterozygote(pair, problems);
                case 1 -> hemizygote(pair, problems);
                default -> absent(problems);
            };
            if (decision != null) {
                decisions.put(pair, decision);
            }
        }
        return decisions;
    }

    /** Pairs first, then hemizygotes, then the genotype of animals without the chromosome. */
    private List<AllelePair> genotypes() {
        List<Allele> alleles = new ArrayList<>(locus.alleles.values());
        List<AllelePair> all = new ArrayList<>();
        if (transmission.recombines()) {
            for (int i = 0; i < alleles.size(); i++) {
                for (int j = i; j < alleles.size(); j++) {
                    all.add(AllelePair.of(locus.id, alleles, i, j, prefix(alleles.get(i), alleles.get(j))));
                }
            }
        }
        if (transmission != Transmission.AUTOSOMAL) {
            for (int i = 0; i < alleles.size(); i++) {
                String symbol = alleles.get(i).symbol();
                String prefix = transmission.partner().isPresent()
                        ? symbols.prefix(locus.id, symbol)
                        : symbols.lonePrefix(locus.id, symbol);
                all.add(AllelePair.hemizygous(locus.id, alleles, i, all.size(), prefix, transmission.partner()));
            }
        }
        if (transmission == Transmission.Y || transmission == Transmission.W) {
            all.add(AllelePair.absent(locus.id, all.size(), symbols.prefix(locus.id)));
        }
        return all;
    }

    private String prefix(Allele one, Allele other) {
        return symbols.prefix(locus.id, one.symbol(), other.symbol());
    }

    private void index(Problems problems) {
        for (int i = 0; i < stated.shows.size(); i++) {
            Dominance.Shows shown = stated.shows.get(i);
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
                                        .map(i -> stated.order.get(i).toString())
                                        .collect(Collectors.joining(", ")));
                return;
            }
        }
    }

    /** A hemizygote shows what is tabled for it, else what its allele shows alone. */
    private @Nullable Decision hemizygote(AllelePair pair, Problems problems) {
        Integer tabled = transmission
                .partner()
                .map(partner -> shownPairs.get(
                        new LinkedHashSet<>(List.of(pair.alleles().get(0).id(), partner))))
                .orElse(null);
        return tabled == null
                ? homozygote(pair, problems)
                : new Decision(stated.shows.get(tabled).expression(), List.of(showsPointer(tabled)));
    }

    private @Nullable Decision absent(Problems problems) {
        String at = Pointer.of("loci", locus.id, "absent");
        if (locus.absent.isEmpty()) {
            problems.add(
                    "absent-undecided",
                    at,
                    "locus " + locus.id
                            + " lies on a chromosome that one sex lacks, and what that sex shows is not stated",
                    "\"absent\": one of " + locus.expressions());
            return null;
        }
        return new Decision(locus.absent.get(), List.of(at));
    }

    private @Nullable Decision homozygote(AllelePair pair, Problems problems) {
        String allele = pair.alleles().get(0).id();
        Integer shown = shownAlone.get(allele);
        if (shown == null) {
            if (pair.isHemizygous() && transmission.recombines()) {
                return null; // reported for the homozygote already
            }
            problems.add(
                    "pair-undecided",
                    pointer + "/shows",
                    "what " + pair + " shows is not stated",
                    "an entry \"" + allele + "\"");
            return null;
        }
        return new Decision(stated.shows.get(shown).expression(), List.of(showsPointer(shown)));
    }

    private @Nullable Decision heterozygote(AllelePair pair, Problems problems) {
        String one = pair.alleles().get(0).id();
        String other = pair.alleles().get(1).id();
        Integer tabled = shownPairs.get(new LinkedHashSet<>(List.of(one, other)));
        Optional<List<Integer>> oneOverOther = chain(one, other);
        Optional<List<Integer>> ordered = oneOverOther.isPresent() ? oneOverOther : chain(other, one);
        if (tabled != null && ordered.isPresent()) {
            problems.add(
                    "pair-decided-twice",
                    showsPointer(tabled),
                    "the pair " + pair + " of locus " + locus.id + " is decided both by this entry and by the order "
                            + ordered.get().stream()
                                    .map(i -> stated.order.get(i).toString())
                                    .collect(Collectors.joining(", ")),
                    "exactly one of the two");
            return null;
        }
        if (tabled != null) {
            return new Decision(stated.shows.get(tabled).expression(), List.of(showsPointer(tabled)));
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
        return new Decision(stated.shows.get(shown).expression(), pointers.build());
    }

    /** Finds the shortest chain of order statements from one allele down to another, by breadth-first search. */
    private Optional<List<Integer>> chain(String from, String to) {
        Map<String, List<Integer>> reached = new LinkedHashMap<>();
        ArrayDeque<String> queue = new ArrayDeque<>(List.of(from));
        while (!queue.isEmpty()) {
            String at = queue.remove();
            List<Integer> soFar = reached.getOrDefault(at, List.of());
            for (int i = 0; i < stated.order.size(); i++) {
                Dominance.Order step = stated.order.get(i);
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
        return pointer + Pointer.of("shows", stated.shows.get(index).key());
    }
}
