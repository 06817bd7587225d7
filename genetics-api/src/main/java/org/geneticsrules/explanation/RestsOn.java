package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.Bearing;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * The statements of a model that the looks of some animals rest on, and no others: the cases, masks and statements of dominance without
 * which an animal that there may be would look different.
 *
 * <p>Each trait is followed by itself, through what each animal among those in question needs ({@link Bearing}). What the dominance of a
 * locus says counts for the genotypes that occur and show an expression that matters. Animals that are lost before they are counted are
 * not among those in question. Which statements decide who is lost is another question. Immutable and thread-safe.
 *
 * @param statements pointers of cases, masks and statements of dominance, in the order of the model's document
 * @param loci the loci whose expression matters, in model order
 */
public record RestsOn(Set<String> statements, Set<String> loci) {

    /**
     * Copies the collections.
     *
     * @param statements pointers of statements
     * @param loci the loci that matter
     */
    public RestsOn {
        statements = ImmutableSet.copyOf(statements);
        loci = ImmutableSet.copyOf(loci);
    }

    /**
     * Returns what the looks of some genotypes rest on, in whichever sex may have them.
     *
     * @param compiled the model
     * @param pairs the pairs that occur at each locus read, in any combination
     * @param view what is looked at
     * @return statements and loci
     * @throws TooLargeException if the diagrams of what matters would be too large
     */
    public static RestsOn of(CompiledModel compiled, Map<String, ? extends Collection<AllelePair>> pairs, View view) {
        return of(compiled, pairs, Optional.empty(), view);
    }

    /**
     * Returns what the looks of some genotypes rest on.
     *
     * @param compiled the model
     * @param pairs the pairs that occur at each locus read, in any combination
     * @param only the sex of the animals; empty for both
     * @param view what is looked at
     * @return statements and loci
     * @throws TooLargeException if the diagrams of what matters would be too large
     */
    public static RestsOn of(
            CompiledModel compiled,
            Map<String, ? extends Collection<AllelePair>> pairs,
            Optional<Sex> only,
            View view) {
        Set<String> statements = new LinkedHashSet<>();
        Set<String> loci = new LinkedHashSet<>();
        for (Sex sex : only.map(List::of).orElseGet(() -> List.of(Sex.values()))) {
            Map<String, Map<String, Set<AllelePair>>> shown = new LinkedHashMap<>();
            Map<String, Set<String>> expressions = new LinkedHashMap<>();
            pairs.forEach((name, occurring) -> {
                Map<String, Set<AllelePair>> here = shown(compiled.model().locus(name), occurring, sex);
                here.keySet().removeIf(expression -> isLost(compiled, name, expression, sex, view.census()));
                shown.put(name, here);
                expressions.put(name, here.keySet());
            });
            if (expressions.values().stream().anyMatch(Set::isEmpty)) {
                continue; // no animal of that sex is counted
            }
            for (String trait : view.traits()) {
                if (!trait.equals(Sex.VARIABLE)) {
                    Bearing.Found found = compiled.bearing(trait, view.stage()).in(sex, expressions);
                    statements.addAll(found.statements());
                    found.loci().forEach((name, matter) -> {
                        loci.add(name);
                        Locus locus = compiled.model().locus(name);
                        for (String expression : matter) {
                            Objects.requireNonNull(shown.get(name))
                                    .getOrDefault(expression, Set.of())
                                    .forEach(pair -> statements.addAll(locus.decidedBy(pair, sex)));
                        }
                    });
                }
            }
        }
        return new RestsOn(statements, loci).inOrder(compiled);
    }

    /** The pairs that animals of a sex may have, by what they show. */
    private static Map<String, Set<AllelePair>> shown(Locus locus, Collection<AllelePair> pairs, Sex sex) {
        Map<String, Set<AllelePair>> shown = new LinkedHashMap<>();
        for (AllelePair pair : pairs) {
            if (pair.alleles().size() == locus.transmission().strands(sex)) {
                shown.computeIfAbsent(locus.expression(pair, sex), key -> new LinkedHashSet<>())
                        .add(pair);
            }
        }
        return shown;
    }

    private static boolean isLost(CompiledModel compiled, String locus, String expression, Sex sex, Census census) {
        return compiled.model().viability().values().stream()
                .anyMatch(one -> one.concerns(locus, expression, sex) && isLost(one, census));
    }

    private static boolean isLost(Viability one, Census census) {
        return switch (census) {
            case CONCEIVED -> false;
            case BORN -> one.birth().isZero();
            case SCORED -> one.birth().isZero() || one.scored().isZero();
        };
    }

    /**
     * Returns what these and other looks rest on together.
     *
     * @param compiled the model
     * @param other what other looks rest on
     * @return all statements and loci
     */
    public RestsOn and(CompiledModel compiled, RestsOn other) {
        Set<String> all = new LinkedHashSet<>(statements);
        all.addAll(other.statements);
        Set<String> matter = new LinkedHashSet<>(loci);
        matter.addAll(other.loci);
        return new RestsOn(all, matter).inOrder(compiled);
    }

    private RestsOn inOrder(CompiledModel compiled) {
        Set<String> ordered = new LinkedHashSet<>(compiled.model().statements().keySet());
        ordered.retainAll(statements);
        Set<String> matter = new LinkedHashSet<>(compiled.model().loci().keySet());
        matter.retainAll(loci);
        return new RestsOn(ordered, matter);
    }
}
