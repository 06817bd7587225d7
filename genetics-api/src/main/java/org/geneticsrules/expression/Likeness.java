package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * Finds what no rule tells apart. Two expressions of a locus are alike in a sex if every node that tests the locus leads on to the same
 * from both, in the diagrams of all that is seen, and the same lives are stated for both.
 */
final class Likeness {

    private final Survey survey;
    private final Model model;

    /** For each sex and locus, the class of each expression. */
    private final Map<Sex, Map<String, int[]>> classes = new LinkedHashMap<>();

    Likeness(Survey survey) {
        this.survey = survey;
        this.model = survey.model();
        for (Sex sex : survey.sexes()) {
            Map<String, int[]> byLocus = new LinkedHashMap<>();
            model.loci().values().forEach(locus -> byLocus.put(locus.id(), lives(locus, sex)));
            classes.put(sex, byLocus);
        }
        for (Survey.Scope scope : survey.everywhere()) {
            BitSet seen = new BitSet();
            for (String trait : survey.axes().seen()) {
                survey.nodes().charge(Pointer.of("traits", trait));
                int root = scope.within().of(survey.look(trait));
                survey.visit(root, seen, node -> refine(node, scope));
            }
        }
    }

    /** Expressions are of one class at first where the same is stated of their lives. */
    private int[] lives(Locus locus, Sex sex) {
        Map<List<Probability>, Integer> known = new LinkedHashMap<>();
        return locus.expressions().stream()
                .mapToInt(expression -> {
                    Probability birth = Probability.ONE;
                    Probability scored = Probability.ONE;
                    for (Viability one : model.viability().values()) {
                        if (one.locus().equals(locus.id())
                                && one.expressions().contains(expression)
                                && one.sex().orElse(sex) == sex) {
                            birth = birth.times(one.birth());
                            scored = scored.times(one.scored());
                        }
                    }
                    return known.computeIfAbsent(List.of(birth, scored), lives -> known.size());
                })
                .toArray();
    }

    /** Parts expressions from which a node leads on to different things. */
    private void refine(int node, Survey.Scope scope) {
        int level = survey.nodes().level(node);
        Optional<int[]> found = Optional.ofNullable(classes.get(scope.sex()))
                .flatMap(
                        byLocus -> Optional.ofNullable(byLocus.get(survey.axes().name(level))));
        if (found.isEmpty()) {
            return;
        }
        int[] of = found.get();
        LongTable parts = new LongTable();
        for (int value = 0; value < of.length; value++) {
            long key = LongTable.key(of[value], survey.nodes().child(node, value));
            int part = parts.get(key);
            if (part == LongTable.NONE) {
                part = parts.size();
                parts.put(key, part);
            }
            of[value] = part;
        }
    }

    /** The class of a genotype. */
    private int of(Locus locus, AllelePair pair, Sex sex) {
        return Objects.requireNonNull(Objects.requireNonNull(classes.get(sex)).get(locus.id()))[
                locus.expressionPosition(pair, sex)];
    }

    /** Genotypes of a locus that are not told apart, of two or more each; where the sexes differ, those of each sex. */
    List<Completeness.Alike> genotypes() {
        List<Completeness.Alike> all = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            Map<Sex, List<List<String>>> bySex = new LinkedHashMap<>();
            for (Sex sex : survey.sexes()) {
                bySex.put(
                        sex,
                        groups(locus.pairs(sex), (one, other) -> of(locus, one, sex) == of(locus, other, sex)).stream()
                                .map(group ->
                                        group.stream().map(AllelePair::toString).toList())
                                .toList());
            }
            if (bySex.values().stream().distinct().count() == 1) {
                add(locus, Optional.empty(), bySex.values().iterator().next(), all);
            } else {
                bySex.forEach((sex, groups) -> add(locus, Optional.of(sex), groups, all));
            }
        }
        return all;
    }

    private static void add(Locus locus, Optional<Sex> sex, List<List<String>> groups, List<Completeness.Alike> all) {
        if (!groups.isEmpty()) {
            all.add(new Completeness.Alike(locus.id(), sex, groups));
        }
    }

    /** Alleles either of which may stand for the other in any genotype without any difference. */
    List<Completeness.Alike> alleles() {
        List<Completeness.Alike> all = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            List<Allele> alleles = ImmutableList.copyOf(locus.alleles().values());
            List<Integer> positions = new ArrayList<>();
            for (int i = 0; i < alleles.size(); i++) {
                positions.add(i);
            }
            List<List<String>> groups = groups(positions, (one, other) -> same(locus, one, other)).stream()
                    .map(group -> group.stream()
                            .map(position -> alleles.get(position).id())
                            .toList())
                    .toList();
            add(locus, Optional.empty(), groups, all);
        }
        return all;
    }

    private boolean same(Locus locus, int one, int other) {
        for (Sex sex : survey.sexes()) {
            int strands = locus.transmission().strands(sex);
            if (strands == 1 && of(locus, locus.of(one), sex) != of(locus, locus.of(other), sex)) {
                return false;
            }
            for (int beside = 0; strands == 2 && beside < locus.alleles().size(); beside++) {
                if (of(locus, locus.pair(one, beside), sex) != of(locus, locus.pair(other, beside), sex)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Groups of two or more that are the same. */
    private static <T> List<List<T>> groups(Collection<T> all, BiPredicate<T, T> same) {
        List<List<T>> groups = new ArrayList<>();
        for (T one : all) {
            Optional<List<T>> group =
                    groups.stream().filter(few -> same.test(few.get(0), one)).findFirst();
            if (group.isPresent()) {
                group.get().add(one);
            } else {
                groups.add(new ArrayList<>(List.of(one)));
            }
        }
        return groups.stream().filter(group -> group.size() > 1).toList();
    }

    /** Loci without any difference between their genotypes, and inner traits that nothing reads. */
    List<Completeness.Idle> idle() {
        Set<String> read = read();
        List<Completeness.Idle> idle = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            boolean differs = false;
            for (Sex sex : survey.sexes()) {
                differs |= locus.pairs(sex).stream()
                                .map(pair -> of(locus, pair, sex))
                                .distinct()
                                .count()
                        > 1;
            }
            if (!differs) {
                idle.add(new Completeness.Idle(Pointer.of("loci", locus.id()), locus.id(), read.contains(locus.id())));
            }
        }
        for (TraitRule rule : model.rules().values()) {
            if (!rule.visible() && !read.contains(rule.trait())) {
                idle.add(new Completeness.Idle(Pointer.of("traits", rule.trait()), rule.trait(), false));
            }
        }
        return idle;
    }

    /** Loci and traits that some rule names. */
    private Set<String> read() {
        Set<String> read = new LinkedHashSet<>();
        List<Condition> conditions = new ArrayList<>();
        for (TraitRule rule : model.rules().values()) {
            for (Case one : rule.allCases()) {
                conditions.add(one.when());
                if (one.gives() instanceof CaseState.Threshold sums) {
                    read.addAll(sums.doses().keySet());
                }
            }
        }
        model.masks().values().forEach(mask -> conditions.add(mask.when()));
        conditions.forEach(when -> read.addAll(when.names()));
        model.viability().values().forEach(one -> read.add(one.locus()));
        return read;
    }
}
