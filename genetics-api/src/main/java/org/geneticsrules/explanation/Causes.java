package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * Finds out why genotypes of one locus look the same: pairs with one expression by dominance; pairs with different expressions because
 * a mask covers the difference, because chance may give the same state, or because the rules give it either way. Immutable and thread-safe.
 */
public final class Causes {

    private final CompiledModel compiled;
    private final View view;
    private final Sex sex;
    private final Map<String, String> draws;

    /** What animals of some expressions show; asked for again and again, by locus after locus. */
    private final Map<Map<String, String>, Expressed> shown = new ConcurrentHashMap<>();

    private Causes(CompiledModel compiled, View view, Sex sex, Map<String, String> draws) {
        this.compiled = compiled;
        this.view = view;
        this.sex = sex;
        this.draws = ImmutableMap.copyOf(draws);
    }

    /**
     * Starts with an animal.
     *
     * @param compiled the model
     * @param view what is looked at
     * @param sex the animal's sex
     * @param draws what chance decided in its life, by statement, as far as it matters
     * @return the finder of causes
     */
    public static Causes in(CompiledModel compiled, View view, Sex sex, Map<String, String> draws) {
        return new Causes(compiled, view, sex, draws);
    }

    /**
     * Returns why some pairs of a locus look the same in the animal.
     *
     * @param expressions the animal's expressions at all loci read
     * @param locus id of the locus
     * @param alternatives at least two pairs of the locus that give the animal the same look
     * @return the causes, dominance first
     */
    public List<Cause> of(Map<String, String> expressions, String locus, Collection<AllelePair> alternatives) {
        Locus at = compiled.model().locus(locus);
        Map<String, List<AllelePair>> byExpression = new LinkedHashMap<>();
        for (AllelePair pair : alternatives) {
            byExpression
                    .computeIfAbsent(at.expression(pair, sex), e -> new ArrayList<>())
                    .add(pair);
        }
        List<Cause> causes = new ArrayList<>();
        Set<String> dominant = new LinkedHashSet<>();
        boolean alike = false;
        for (List<AllelePair> group : byExpression.values()) {
            if (group.size() > 1) {
                alike = true;
                at.alleles().values().stream()
                        .filter(allele -> group.stream().allMatch(pair -> pair.has(allele.id())))
                        .map(Allele::symbol)
                        .forEach(dominant::add);
            }
        }
        if (alike) {
            causes.add(new Cause(Cause.Kind.DOMINANCE, new ArrayList<>(dominant)));
        }
        if (byExpression.size() > 1) {
            causes.addAll(acrossExpressions(expressions, locus, byExpression.keySet()));
        }
        return causes;
    }

    private List<Cause> acrossExpressions(Map<String, String> expressions, String locus, Set<String> alternatives) {
        Set<String> masks = new LinkedHashSet<>();
        Set<String> others = new LinkedHashSet<>();
        Set<String> drawn = new LinkedHashSet<>();
        boolean sameLook = false;
        String first = alternatives.iterator().next();
        Expressed one = express(expressions, locus, first);
        for (String alternative : alternatives) {
            if (alternative.equals(first)) {
                continue;
            }
            Expressed other = express(expressions, locus, alternative);
            boolean covered = false;
            for (String trait : view.traits()) {
                TraitTrace a = Objects.requireNonNull(one.traits().get(trait));
                TraitTrace b = Objects.requireNonNull(other.traits().get(trait));
                if (!a.own().equals(b.own()) || !a.masks().equals(b.masks())) {
                    masks.addAll(a.masks());
                    masks.addAll(b.masks());
                    covered |= !a.masks().isEmpty() || !b.masks().isEmpty();
                }
            }
            Set<String> byChance = byChance(one, other, locus);
            drawn.addAll(covered ? Set.of() : byChance);
            if (!covered && byChance.isEmpty()) {
                sameLook = true;
                others.addAll(lociInRules(compiled.model(), one, locus));
            }
        }
        List<Cause> causes = new ArrayList<>();
        if (!masks.isEmpty()) {
            causes.add(new Cause(Cause.Kind.MASK, new ArrayList<>(masks)));
        }
        if (!drawn.isEmpty()) {
            causes.add(new Cause(Cause.Kind.CHANCE, new ArrayList<>(drawn)));
        }
        if (sameLook) {
            causes.add(new Cause(Cause.Kind.SAME_LOOK, new ArrayList<>(others)));
        }
        return causes;
    }

    /** The traits of which rules tell two animals apart, so that they can look the same only as chance decides. */
    private Set<String> byChance(Expressed one, Expressed other, String locus) {
        Set<String> found = new LinkedHashSet<>();
        for (Map.Entry<String, TraitTrace> entry : one.traits().entrySet()) {
            TraitTrace a = entry.getValue();
            TraitTrace b = other.traits().get(entry.getKey());
            if (b != null && (a.draw().isPresent() || b.draw().isPresent())) {
                if (!a.rule().equals(b.rule())
                        || (a.rule().isPresent() && sums(a.trait(), a.rule().get(), locus))) {
                    found.add(a.trait());
                }
            }
        }
        return found;
    }

    /** Whether a statement adds up doses of a locus. */
    private boolean sums(String trait, String statement, String locus) {
        TraitRule rule = Objects.requireNonNull(compiled.model().rules().get(trait));
        return rule.allCases().stream()
                .filter(one -> rule.pointer(one).equals(statement))
                .anyMatch(one -> one.gives() instanceof CaseState.Threshold sum
                        && sum.doses().containsKey(locus));
    }

    /** The other loci in rules that read this locus at all: through them the look is the same either way. */
    private static Set<String> lociInRules(Model model, Expressed animal, String locus) {
        Set<String> others = new LinkedHashSet<>();
        for (String trait : animal.traits().keySet()) {
            TraitRule rule = model.rules().get(trait);
            if (rule == null) {
                continue;
            }
            Set<String> read = new LinkedHashSet<>();
            for (Case one : rule.cases()) {
                one.when().names().stream().filter(model.loci()::containsKey).forEach(read::add);
            }
            if (read.contains(locus)) {
                others.addAll(read);
            }
        }
        others.remove(locus);
        return others;
    }

    private Expressed express(Map<String, String> expressions, String locus, String expression) {
        Map<String, String> changed = new LinkedHashMap<>(expressions);
        changed.put(locus, expression);
        return shown.computeIfAbsent(
                changed, animal -> compiled.oneWay(animal, sex, view.stage(), draws, view.traits()));
    }

    /**
     * Tells whether causes that were found way by way leave open why some pairs of a locus look the same: pairs that show differently,
     * and only dominance to hide them, which cannot.
     *
     * @param locus the locus
     * @param alternatives the pairs that may lie behind a look
     * @param causes the causes found within the ways to it
     * @return true if what hides the pairs from one another is to be sought across the ways
     */
    public static boolean leaveOpen(Locus locus, Collection<AllelePair> alternatives, Collection<Cause> causes) {
        long shown = alternatives.stream()
                .flatMap(pair -> locus.expressions(pair).stream())
                .distinct()
                .count();
        return causes.isEmpty()
                || (shown > 1 && causes.stream().allMatch(cause -> cause.kind() == Cause.Kind.DOMINANCE));
    }

    /**
     * Returns why genotypes of a locus look the same though no way to the look leaves both of them open: by chance, where that decides on
     * some way, or through other loci.
     *
     * @param ways what the ways to the look need
     * @param view what is looked at
     * @param loci the loci of the model
     * @param locus id of the locus
     * @return the cause
     */
    public static Cause across(Collection<Condition> ways, View view, Set<String> loci, String locus) {
        Set<String> others = new LinkedHashSet<>();
        Set<String> drawn = new LinkedHashSet<>();
        for (Condition way : ways) {
            for (String name : way.names()) {
                if (loci.contains(name) && !name.equals(locus)) {
                    others.add(name);
                } else if (name.startsWith("/traits/")) {
                    drawn.add(Pointer.names(name).get(1));
                }
            }
        }
        drawn.retainAll(view.traits());
        return drawn.isEmpty()
                ? new Cause(Cause.Kind.SAME_LOOK, new ArrayList<>(others))
                : new Cause(Cause.Kind.CHANCE, new ArrayList<>(drawn));
    }
}
