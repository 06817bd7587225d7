package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Finds where a model makes no claim, as disjoint boxes: the ways in its diagrams that end in no state. */
final class Gaps {

    /** As many boxes of one trait as a person will read. */
    static final int MOST = 200;

    private final Survey survey;

    Gaps(Survey survey) {
        this.survey = survey;
    }

    List<Completeness.Gap> find() {
        List<Completeness.Gap> gaps = new ArrayList<>();
        for (TraitRule rule : survey.model().rules().values()) {
            String trait = rule.trait();
            List<Condition> own = boxes(
                    survey.rules().own(trait, LifeStage.unstated()),
                    rule.states().size());
            List<Condition> shown =
                    rule.visible() ? boxes(survey.look(trait), rule.states().size()) : List.of();
            if (own.equals(shown)) {
                add(trait, Completeness.Gap.About.EITHER, own, gaps);
            } else {
                add(trait, Completeness.Gap.About.OWN_STATE, own, gaps);
                add(trait, Completeness.Gap.About.SEEN, shown, gaps);
            }
        }
        return gaps;
    }

    private static void add(
            String trait, Completeness.Gap.About about, List<Condition> boxes, List<Completeness.Gap> gaps) {
        if (!boxes.isEmpty()) {
            boolean all = boxes.size() <= MOST;
            gaps.add(new Completeness.Gap(trait, about, all ? boxes : boxes.subList(0, MOST), all));
        }
    }

    /** Boxes that end in a leaf value; where the sexes differ, those of each sex. */
    private List<Condition> boxes(int root, int value) {
        List<List<Condition>> bySex = new ArrayList<>();
        for (Sex sex : survey.sexes()) {
            Restriction within = survey.wide(sex);
            List<Condition> found = new ArrayList<>();
            int restricted = within.of(root);
            if (contains(survey.nodes().leaves(restricted), value)) {
                follow(restricted, Nodes.leaf(value), within, Condition.always(), found, new LongTable());
            }
            bySex.add(found);
        }
        if (bySex.stream().distinct().count() == 1) {
            return bySex.get(0);
        }
        List<Condition> all = new ArrayList<>();
        for (Sex sex : survey.sexes()) {
            for (Condition box : bySex.get(survey.sexes().indexOf(sex))) {
                Condition one = Condition.where(Sex.VARIABLE, sex.word());
                for (String name : box.names()) {
                    one = one.and(name, Objects.requireNonNull(box.variables().get(name)));
                }
                all.add(one);
            }
        }
        return all;
    }

    private static boolean contains(int[] leaves, int value) {
        for (int leaf : leaves) {
            if (leaf == value) {
                return true;
            }
        }
        return false;
    }

    /** Follows the ways to a leaf; returns false where there is none below, and does not go there again. */
    private boolean follow(
            int node, int leaf, Restriction within, Condition box, List<Condition> found, LongTable dead) {
        if (node < 0) {
            if (node == leaf && canBe(box)) {
                found.add(box);
            }
            return node == leaf;
        }
        if (found.size() > MOST || dead.get(node) != LongTable.NONE) {
            return found.size() > MOST;
        }
        Nodes nodes = survey.nodes();
        int level = nodes.level(node);
        List<String> values = survey.axes().values(level);
        boolean any = false;
        boolean[] done = new boolean[values.size()];
        for (int value = 0; value < done.length; value++) {
            if (!done[value] && within.allows(level, value)) {
                int next = nodes.child(node, value);
                List<String> together = new ArrayList<>();
                for (int same = value; same < done.length; same++) {
                    if (within.allows(level, same) && nodes.child(node, same) == next) {
                        done[same] = true;
                        together.add(values.get(same));
                    }
                }
                Condition longer = box.and(survey.axes().name(level), Allowed.only(together.toArray(String[]::new)));
                any |= follow(next, leaf, within, longer, found, dead);
            }
        }
        if (!any) {
            dead.put(node, 0);
        }
        return any;
    }

    /** Whether all progressions that a box names can be in its states at one count of their clock. */
    private boolean canBe(Condition box) {
        for (Clock clock : Clock.values()) {
            if (survey.phases(clock).all().stream().noneMatch(phase -> canBe(box, phase))) {
                return false;
            }
        }
        return true;
    }

    private static boolean canBe(Condition box, Phases.Phase phase) {
        for (String draw : phase.states().keySet()) {
            Set<String> possible = Objects.requireNonNull(phase.states().get(draw));
            Allowed asked = box.variables().getOrDefault(draw, Allowed.allBut());
            if (asked.among(ImmutableList.copyOf(possible)).isEmpty()) {
                return false;
            }
        }
        return true;
    }
}
