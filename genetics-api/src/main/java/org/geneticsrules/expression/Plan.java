package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.LifeStage;

/**
 * What a diagram tests, in which order.
 *
 * <p>First the sex, if anything depends on it. Then the loci: those at which animals are lost, then those that decide over many
 * traits, so that a masking locus cuts off all that it hides; among equals, loci of one trait together. The loci of a linkage group
 * stand together in map order, at the place of the first. Each draw stands directly after the last locus on which it depends whether
 * it matters.
 */
final class Plan implements Axes {

    private final Model model;
    private final Relevance relevance;
    private final Map<String, Paths> paths = new LinkedHashMap<>();
    private final ImmutableList<Level> levels;
    private final Map<String, Integer> positions = new LinkedHashMap<>();

    private Plan(Model model, List<Look> looks, Census census, Set<String> also, Optional<List<String>> stated) {
        this.model = model;
        Reads reads = Reads.of(model, looks);
        if (!reads.needs().isEmpty()) {
            throw new ProblemsException(reads.needs());
        }
        this.relevance = Relevance.of(model, reads, census, also);
        List<String> loci = stated.map(order ->
                        order.stream().filter(relevance.loci()::contains).toList())
                .orElseGet(() -> LocusOrder.grouped(model, relevance, looks));
        if (loci.size() < relevance.loci().size()) {
            throw new IllegalArgumentException("the order " + stated + " leaves out some of " + relevance.loci());
        }
        Map<Integer, List<Draw>> after = new LinkedHashMap<>(); // draws by position of the last locus they depend on
        for (Viability one : relevance.viability()) {
            int place = loci.indexOf(one.locus());
            draw(one.birth(), birth(one), place, after);
            if (census == Census.SCORED) {
                draw(one.scored(), scored(one), place, after);
            }
        }
        for (Reads.Uncertain one : reads.uncertain().values()) {
            Distribution<String> chances = chances(one);
            if (chances.outcomes().size() > 1) {
                int last = -1;
                for (String locus : LocusOrder.deciding(model, one)) {
                    last = Math.max(last, loci.indexOf(locus));
                }
                after.computeIfAbsent(last, key -> new ArrayList<>()).add(new Draw(one.pointer(), chances));
            }
        }
        ImmutableList.Builder<Level> all = ImmutableList.builder();
        if (relevance.sex()) {
            all.add(new Level.OfSex());
        }
        after.getOrDefault(-1, List.of()).forEach(draw -> all.add(new Level.OfDraw(draw)));
        for (int i = 0; i < loci.size(); i++) {
            all.add(new Level.OfLocus(model.locus(loci.get(i))));
            after.getOrDefault(i, List.of()).forEach(draw -> all.add(new Level.OfDraw(draw)));
        }
        this.levels = all.build();
        levels.forEach(level -> positions.put(level.name(), positions.size()));
    }

    /**
     * Plans the diagram of a question.
     *
     * @throws ProblemsException if a stage lacks what the question depends on
     */
    static Plan of(Model model, List<Look> looks, Census census) {
        return new Plan(model, looks, census, ImmutableSet.of(), Optional.empty());
    }

    /**
     * Plans a diagram that tests loci in a stated order and counts every loss, whether or not it bears on what is looked at.
     *
     * @throws ProblemsException if a stage lacks what the question depends on
     */
    static Plan inOrder(Model model, List<Look> looks, Census census, List<String> order) {
        return new Plan(model, looks, census, lossesOf(model), Optional.of(order));
    }

    /** Plans the diagram of who is lost, for whatever reason. */
    static Plan ofLosses(Model model, Census census) {
        return new Plan(model, List.of(), census, lossesOf(model), Optional.empty());
    }

    private static Set<String> lossesOf(Model model) {
        return model.viability().values().stream().map(Viability::locus).collect(ImmutableSet.toImmutableSet());
    }

    ImmutableList<Level> levels() {
        return levels;
    }

    @Override
    public int[] widths() {
        return levels.stream().mapToInt(level -> level.values().size()).toArray();
    }

    List<Viability> viability() {
        return relevance.viability();
    }

    @Override
    public OptionalInt position(String name) {
        Integer position = positions.get(name);
        return position == null ? OptionalInt.empty() : OptionalInt.of(position);
    }

    @Override
    public int[] progressed(String pointer, CaseState.Progression chain, LifeStage stage) {
        return Objects.requireNonNull(paths.get(pointer), pointer)
                .at(stage.count(chain.clock()).orElseThrow());
    }

    /** Linkage groups several of whose loci are tested. */
    List<String> groups() {
        return model.groups().values().stream()
                .filter(group ->
                        group.loci().stream().filter(positions::containsKey).count() > 1)
                .map(LinkageGroup::pointer)
                .toList();
    }

    static String birth(Viability one) {
        return one.pointer() + "/birth";
    }

    static String scored(Viability one) {
        return one.pointer() + "/scored";
    }

    private static void draw(Probability lives, String name, int place, Map<Integer, List<Draw>> after) {
        if (!lives.isZero() && !lives.isOne()) {
            Map<String, Probability> chances = new LinkedHashMap<>();
            chances.put("lives", lives);
            chances.put("lost", lives.complement());
            after.computeIfAbsent(place, key -> new ArrayList<>()).add(new Draw(name, Distribution.of(chances)));
        }
    }

    private Distribution<String> chances(Reads.Uncertain one) {
        if (one.one().gives() instanceof CaseState.Chance chance) {
            return chance.chances();
        }
        if (one.one().gives() instanceof CaseState.Threshold sums) {
            return sums.residual().map(String::valueOf);
        }
        CaseState.Progression chain = (CaseState.Progression) one.one().gives();
        Paths found = new Paths(chain, one.rule().states(), one.counts());
        paths.put(one.pointer(), found);
        return found.chances();
    }
}
