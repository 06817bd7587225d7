package org.geneticsrules.explanation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
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

    private final CompiledModel compiled;
    private final Map<String, ? extends Collection<AllelePair>> pairs;
    private final View view;
    private final Set<String> found = new LinkedHashSet<>();

    private RestsOn(CompiledModel compiled, Map<String, ? extends Collection<AllelePair>> pairs, View view) {
        this.compiled = compiled;
        this.pairs = pairs;
        this.view = view;
    }

    /**
     * Returns the statements that the looks of some genotypes rest on.
     *
     * @param compiled the model
     * @param pairs the pairs that occur at each locus read, in any combination
     * @param view what is looked at
     * @return pointers of statements, in the order of the model's document
     */
    public static Set<String> of(
            CompiledModel compiled, Map<String, ? extends Collection<AllelePair>> pairs, View view) {
        RestsOn rests = new RestsOn(compiled, pairs, view);
        for (String trait : view.traits()) {
            if (!trait.equals(Sex.VARIABLE)) {
                rests.follow(trait);
            }
        }
        Set<String> ordered = new LinkedHashSet<>(compiled.model().statements().keySet());
        ordered.retainAll(rests.found);
        return ordered;
    }

    private void follow(String trait) {
        View alone = new View(List.of(trait), view.stage(), Census.CONCEIVED);
        Diagram<Phenotype> diagram = compiled.diagram(alone);
        Set<String> read = compiled.lociRead(alone);
        diagram.paths((outcome, box) -> {
            for (Sex sex : Sex.values()) {
                Allowed sexes = box.variables().get(Sex.VARIABLE);
                if (sexes == null || sexes.allows(sex.word())) {
                    follow(trait, diagram, read, box, sex);
                }
            }
            return true;
        });
    }

    private void follow(String trait, Diagram<Phenotype> diagram, Set<String> read, Condition box, Sex sex) {
        Map<String, List<String>> expressions = new LinkedHashMap<>();
        Set<String> decided = new LinkedHashSet<>();
        for (String name : read) {
            Locus locus = compiled.model().locus(name);
            Allowed allowed = box.variables().get(name);
            Set<String> occurring = new LinkedHashSet<>();
            for (AllelePair pair : Objects.requireNonNull(pairs.get(name), name)) {
                boolean fits = pair.alleles().size() == locus.transmission().strands(sex);
                if (fits && (allowed == null || allowed.allows(locus.expression(pair, sex)))) {
                    occurring.add(locus.expression(pair, sex));
                    if (allowed != null) {
                        decided.addAll(locus.decidedBy(pair, sex));
                    }
                }
            }
            if (occurring.isEmpty()) {
                return; // no genotype takes this way
            }
            expressions.put(name, new ArrayList<>(occurring));
        }
        found.addAll(decided);
        Map<String, String> draws = new LinkedHashMap<>();
        for (Level level : diagram.levels()) {
            Allowed allowed = box.variables().get(level.name());
            if (level instanceof Level.OfDraw && allowed != null) {
                level.values().stream().filter(allowed::allows).findFirst().ifPresent(v -> draws.put(level.name(), v));
            }
        }
        for (Map<String, String> combination : combinations(expressions)) {
            compiled.ways(combination, sex, view.stage(), draws, List.of(trait))
                    .outcomes()
                    .forEach(animal -> rules(animal, trait, sex));
        }
    }

    private void rules(Expressed animal, String trait, Sex sex) {
        Model model = compiled.model();
        TraitTrace trace = Objects.requireNonNull(animal.traits().get(trait));
        // A known own state that is not shown lies under a mask of unknown activity; then it makes no difference.
        boolean ownMatters = trace.own().isEmpty() || trace.shown().isPresent();
        for (String name : trace.masks()) {
            Mask mask = Objects.requireNonNull(model.masks().get(name));
            Mask.Cover cover = Objects.requireNonNull(mask.covers().get(trait));
            ownMatters &= cover.constant().isEmpty();
            found.add(Pointer.of("masks", name));
            mask.when().names().forEach(read -> own(animal, read));
        }
        for (Mask mask : model.masks().values()) {
            if (mask.covers().containsKey(trait) && !trace.masks().contains(mask.id())) {
                notActive(animal, mask, sex);
            }
        }
        if (ownMatters) {
            own(animal, trait);
        }
    }

    /**
     * Cites what keeps a mask from being active: one trait that fails its condition, or the mask and all traits it reads where the
     * condition is unknown; nothing if a locus fails it already, whose dominance is cited for itself.
     */
    private void notActive(Expressed animal, Mask mask, Sex sex) {
        Model model = compiled.model();
        List<String> read = new ArrayList<>();
        // what fails by season or sex is not read any further, so that nothing need be known of its loci
        for (Map.Entry<String, Allowed> variable : mask.when().variables().entrySet()) {
            String name = variable.getKey();
            boolean fails = name.equals(Sex.VARIABLE)
                    ? !variable.getValue().allows(sex.word())
                    : name.equals(LifeStage.SEASON)
                            && !variable.getValue().allows(view.stage().season().orElse(""));
            if (fails) {
                return;
            }
        }
        for (Map.Entry<String, Allowed> variable : mask.when().variables().entrySet()) {
            String name = variable.getKey();
            if (model.loci().containsKey(name)) {
                if (!variable.getValue()
                        .allows(Objects.requireNonNull(animal.expressions().get(name)))) {
                    return;
                }
            } else if (!name.equals(Sex.VARIABLE) && !name.equals(LifeStage.SEASON)) {
                read.add(name);
            }
        }
        for (String name : read) {
            Allowed allowed = Objects.requireNonNull(mask.when().variables().get(name));
            TraitTrace trace = Objects.requireNonNull(animal.traits().get(name));
            if (trace.own().filter(own -> !allowed.allows(own)).isPresent()) {
                own(animal, name);
                return;
            }
        }
        found.add(Pointer.of("masks", mask.id()));
        read.forEach(name -> own(animal, name));
    }

    private void own(Expressed animal, String trait) {
        TraitTrace trace = animal.traits().get(trait);
        if (trace != null) {
            trace.rule().ifPresent(found::add);
            trace.reads().forEach(read -> own(animal, read));
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
