package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * The variables of all rules of a model at all stages at once: the sex, the season, the loci, and one draw for each case that is not
 * certain. The draw of a progression has the states that its chain can be in at any count.
 */
final class EveryStage implements Axes {

    /** A variable and its values. */
    private record Axis(String name, List<String> values) {}

    private final ImmutableList<String> seen;
    private final List<Axis> axes = new ArrayList<>();
    private final Map<String, Integer> positions = new LinkedHashMap<>();
    private final Map<String, CaseState.Progression> chains = new LinkedHashMap<>();

    /** For each progression, the positions in the trait of the states that it can be in. */
    private final Map<String, int[]> ranks = new LinkedHashMap<>();

    EveryStage(Model model) {
        Set<String> visible = new LinkedHashSet<>(model.visibleTraits());
        for (Mask mask : model.masks().values()) {
            visible.addAll(mask.covers().keySet());
        }
        this.seen = ImmutableList.copyOf(visible);
        List<Look> looks = List.of(new Look(seen, LifeStage.unstated()));
        Set<String> all = new LinkedHashSet<>(visible);
        all.addAll(model.rules().keySet());
        Reads reads = Reads.of(model, List.of(new Look(ImmutableList.copyOf(all), LifeStage.unstated())));
        List<String> loci = LocusOrder.free(model, looks);
        Map<Integer, List<Axis>> after = new LinkedHashMap<>(); // draws by position of the last locus they depend on
        for (Reads.Uncertain one : reads.uncertain().values()) {
            List<String> values = values(one);
            if (values.size() > 1) {
                int last = LocusOrder.deciding(model, one).stream()
                        .mapToInt(loci::indexOf)
                        .max()
                        .orElse(-1);
                after.computeIfAbsent(last, key -> new ArrayList<>()).add(new Axis(one.pointer(), values));
            }
        }
        if (model.distinguishesSex()) {
            axes.add(new Axis(Sex.VARIABLE, Sex.words()));
        }
        if (!model.catalogue().seasons().isEmpty()) {
            axes.add(new Axis(LifeStage.SEASON, model.catalogue().seasons()));
        }
        axes.addAll(after.getOrDefault(-1, List.of()));
        for (int i = 0; i < loci.size(); i++) {
            axes.add(new Axis(loci.get(i), model.locus(loci.get(i)).expressions()));
            axes.addAll(after.getOrDefault(i, List.of()));
        }
        axes.forEach(axis -> positions.put(axis.name(), positions.size()));
    }

    private List<String> values(Reads.Uncertain one) {
        if (one.one().gives() instanceof CaseState.Threshold sums) {
            return sums.residual().outcomes().stream().map(String::valueOf).toList();
        }
        List<String> states = one.rule().states().stream()
                .filter(one.one().gives().states()::contains)
                .toList();
        if (one.one().gives() instanceof CaseState.Progression chain) {
            chains.put(one.pointer(), chain);
            ranks.put(
                    one.pointer(),
                    states.stream().mapToInt(one.rule().states()::indexOf).toArray());
            return states;
        }
        return ImmutableList.copyOf(one.one().gives().states());
    }

    /** Traits that can be seen: those with a rule and those that a mask gives a state. */
    List<String> seen() {
        return seen;
    }

    /** The progressions, by the pointer of their case. */
    Map<String, CaseState.Progression> chains() {
        return chains;
    }

    int size() {
        return axes.size();
    }

    String name(int level) {
        return axes.get(level).name();
    }

    List<String> values(int level) {
        return axes.get(level).values();
    }

    @Override
    public OptionalInt position(String name) {
        Integer position = positions.get(name);
        return position == null ? OptionalInt.empty() : OptionalInt.of(position);
    }

    @Override
    public int[] widths() {
        return axes.stream().mapToInt(axis -> axis.values().size()).toArray();
    }

    @Override
    public int[] progressed(String pointer, CaseState.Progression chain, LifeStage stage) {
        return Objects.requireNonNull(ranks.get(pointer), pointer).clone();
    }
}
