package org.geneticsrules.explanation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * Finds the statements of a model that an answer rests on: those on the ways of non-zero weight to the traits asked for, and no
 * others.
 *
 * <p>For each trait by itself, every way through its diagram that the given genotypes can take is followed. The dominance statements
 * of the loci tested on the way count, with the masks that decide what is seen; the trait's own rule counts unless a mask shows one
 * state whatever lies beneath. Stateless and thread-safe.
 */
public final class RestsOn {

    /** A way that stands for more combinations than this is followed by its first one and by single changes of it. */
    private static final int MOST_COMBINATIONS = 512;

    private RestsOn() {}

    /**
     * Returns the statements that the looks of some genotypes rest on.
     *
     * @param compiled the model
     * @param pairs the pairs that occur at each locus read, in any combination
     * @param traits the traits asked for
     * @return pointers of statements, in the order of the model's document
     */
    public static Set<String> of(
            CompiledModel compiled, Map<String, ? extends Collection<AllelePair>> pairs, Collection<String> traits) {
        Set<String> found = new LinkedHashSet<>();
        for (String trait : traits) {
            Set<String> read = compiled.lociRead(List.of(trait));
            compiled.diagram(List.of(trait)).paths((outcome, box) -> {
                follow(compiled, pairs, trait, read, box, found);
                return true;
            });
        }
        Set<String> ordered = new LinkedHashSet<>(compiled.model().statements().keySet());
        ordered.retainAll(found);
        return ordered;
    }

    private static void follow(
            CompiledModel compiled,
            Map<String, ? extends Collection<AllelePair>> pairs,
            String trait,
            Set<String> read,
            Condition box,
            Set<String> found) {
        Model model = compiled.model();
        Map<String, List<String>> expressions = new LinkedHashMap<>();
        Set<String> decided = new LinkedHashSet<>();
        for (String name : read) {
            Locus locus = model.locus(name);
            Allowed allowed = box.variables().get(name);
            Set<String> occurring = new LinkedHashSet<>();
            for (AllelePair pair : Objects.requireNonNull(pairs.get(name), name)) {
                if (allowed == null || allowed.allows(locus.expression(pair, Sex.FEMALE))) {
                    occurring.add(locus.expression(pair, Sex.FEMALE));
                    if (allowed != null) {
                        decided.addAll(locus.decidedBy(pair, Sex.FEMALE));
                    }
                }
            }
            if (occurring.isEmpty()) {
                return; // no genotype takes this way
            }
            expressions.put(name, new ArrayList<>(occurring));
        }
        found.addAll(decided);
        for (Map<String, String> combination : combinations(expressions)) {
            rules(model, compiled.express(combination, List.of(trait)), trait, found);
        }
    }

    private static void rules(Model model, Expressed animal, String trait, Set<String> found) {
        TraitTrace trace = Objects.requireNonNull(animal.traits().get(trait));
        // A known own state that is not shown lies under a mask of unknown activity; then it makes no difference.
        boolean ownMatters = trace.own().isEmpty() || trace.shown().isPresent();
        for (String name : trace.masks()) {
            Mask mask = Objects.requireNonNull(model.masks().get(name));
            Mask.Cover cover = Objects.requireNonNull(mask.covers().get(trait));
            ownMatters &= cover.constant().isEmpty();
            found.add(Pointer.of("masks", name));
            mask.when().names().forEach(read -> own(animal, read, found));
        }
        for (Mask mask : model.masks().values()) {
            if (mask.covers().containsKey(trait) && !trace.masks().contains(mask.id())) {
                notActive(model, animal, mask, found);
            }
        }
        if (ownMatters) {
            own(animal, trait, found);
        }
    }

    /**
     * Cites what keeps a mask from being active: one trait that fails its condition, or the mask and all traits it reads where the
     * condition is unknown; nothing if a locus fails it already, whose dominance is cited for itself.
     */
    private static void notActive(Model model, Expressed animal, Mask mask, Set<String> found) {
        List<String> read = new ArrayList<>();
        for (Map.Entry<String, Allowed> variable : mask.when().variables().entrySet()) {
            String name = variable.getKey();
            Allowed allowed = variable.getValue();
            if (!model.loci().containsKey(name)) {
                read.add(name);
            } else if (!allowed.allows(
                    Objects.requireNonNull(animal.expressions().get(name)))) {
                return;
            }
        }
        for (String name : read) {
            Allowed allowed = Objects.requireNonNull(mask.when().variables().get(name));
            TraitTrace trace = Objects.requireNonNull(animal.traits().get(name));
            if (trace.own().filter(own -> !allowed.allows(own)).isPresent()) {
                own(animal, name, found);
                return;
            }
        }
        found.add(Pointer.of("masks", mask.id()));
        read.forEach(name -> own(animal, name, found));
    }

    private static void own(Expressed animal, String trait, Set<String> found) {
        TraitTrace trace = animal.traits().get(trait);
        if (trace != null) {
            trace.rule().ifPresent(found::add);
            trace.reads().forEach(read -> own(animal, read, found));
        }
    }

    /** All combinations if they are few, otherwise one and every single change of it. */
    private static List<Map<String, String>> combinations(Map<String, List<String>> values) {
        List<Map<String, String>> all = new ArrayList<>();
        double count = values.values().stream().mapToDouble(List::size).reduce(1, (a, b) -> a * b);
        Map<String, String> first = new LinkedHashMap<>();
        values.forEach((name, options) -> first.put(name, options.get(0)));
        all.add(first);
        values.forEach((name, options) -> {
            List<Map<String, String>> bases = count <= MOST_COMBINATIONS ? new ArrayList<>(all) : List.of(first);
            for (String option : options.subList(1, options.size())) {
                for (Map<String, String> base : bases) {
                    Map<String, String> changed = new LinkedHashMap<>(base);
                    changed.put(name, option);
                    all.add(changed);
                }
            }
        });
        return all;
    }
}
