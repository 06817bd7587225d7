package org.geneticsrules.expression;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;

/**
 * In which order loci are best tested: those at which animals are lost, then those that decide over many traits, so that a masking
 * locus cuts off all that it hides; among equals, loci of one trait together.
 */
final class LocusOrder {

    /** What decides where the loci of a group, or a locus alone, are tested. */
    private record Block(List<String> loci, int reach, int firstTrait) {}

    private final Map<String, Integer> reach = new LinkedHashMap<>();
    private final Map<String, Integer> first = new LinkedHashMap<>();

    private LocusOrder(Model model, List<Look> looks) {
        int traits = 0;
        for (Look look : looks) {
            for (String trait : look.traits()) {
                int number = traits++;
                for (String locus : Reads.of(model, List.of(new Look(List.of(trait), look.stage())))
                        .loci()) {
                    reach.merge(locus, 1, Integer::sum);
                    first.putIfAbsent(locus, number);
                }
            }
        }
    }

    /** The order in which the loci of a linkage group stand together in map order, at the place of the first. */
    static List<String> grouped(Model model, Relevance relevance, List<Look> looks) {
        LocusOrder order = new LocusOrder(model, looks);
        int most = looks.stream().mapToInt(look -> look.traits().size()).sum() + 1;
        for (Viability one : relevance.viability()) {
            order.reach.put(one.locus(), most);
        }
        List<Block> blocks = new ArrayList<>();
        Set<String> left = new LinkedHashSet<>(relevance.loci());
        while (!left.isEmpty()) {
            String locus = left.iterator().next();
            List<String> together = model.groupOf(locus).map(LinkageGroup::loci).orElse(List.of(locus)).stream()
                    .filter(left::contains)
                    .toList();
            together.forEach(left::remove);
            blocks.add(order.block(together));
        }
        return inOrder(blocks);
    }

    /** The order of all loci of a model where it does not matter how they are handed down. */
    static List<String> free(Model model, List<Look> looks) {
        LocusOrder order = new LocusOrder(model, looks);
        List<Block> blocks = new ArrayList<>();
        model.loci().keySet().forEach(locus -> blocks.add(order.block(List.of(locus))));
        return inOrder(blocks);
    }

    /** Loci that decide whether the chance of a case plays a part. */
    static Set<String> deciding(Model model, Reads.Uncertain one) {
        ImmutableSet.Builder<String> loci = ImmutableSet.builder();
        List<Case> conditions = Optional.of(one.one()).equals(one.rule().otherwise())
                ? one.rule().cases()
                : List.of(one.one());
        conditions.forEach(read -> loci.addAll(Reads.of(model, read.when()).loci()));
        if (one.one().gives() instanceof CaseState.Threshold sums) {
            loci.addAll(sums.doses().keySet());
        }
        return loci.build();
    }

    private Block block(List<String> loci) {
        return new Block(
                loci,
                loci.stream().mapToInt(one -> reach.getOrDefault(one, 0)).max().orElse(0),
                loci.stream().mapToInt(one -> first.getOrDefault(one, 0)).min().orElse(0));
    }

    private static List<String> inOrder(List<Block> blocks) {
        return blocks.stream()
                .sorted(Comparator.comparing((Block block) -> -block.reach()).thenComparing(Block::firstTrait))
                .flatMap(block -> block.loci().stream())
                .toList();
    }
}
