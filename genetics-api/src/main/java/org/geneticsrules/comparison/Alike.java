package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A way to look at a kit once: at which stage, in which light, at which traits. Kits looked at in the same way can be counted by their looks.
 *
 * @param stage how old they were
 * @param light in which light
 * @param traits ids of the traits that could be told then
 * @param bySex whether the model makes a difference between the sexes there, and they are recorded
 */
record Alike(LifeStage stage, Optional<String> light, List<String> traits, boolean bySex) {

    /** More looks than these are not compared. */
    private static final int MOST_LOOKS = 512;

    /** The way in which a kit was looked at, if it was once only and the look was certain. */
    static Optional<Alike> of(Individual kit, CompiledModel compiled) {
        Catalogue catalogue = compiled.model().catalogue();
        if ((kit.observations().size() != 1) || !kit.tests().isEmpty()) {
            return Optional.empty();
        }
        Observation seen = kit.observations().get(0);
        if (seen.looks().size() != 1) {
            return Optional.empty();
        }
        List<String> traits = seen.traits().stream()
                .filter(trait -> (catalogue.judgeable(trait, seen.stage()) != Judgeable.NO)
                        && (catalogue.trait(trait).orElseThrow().judgeable(seen.light()) != Judgeable.NO))
                .toList();
        return traits.isEmpty()
                ? Optional.empty()
                : Optional.of(new Alike(
                        seen.stage(),
                        seen.light(),
                        traits,
                        kit.sex().isPresent()
                                && differs(compiled, View.of(traits).at(seen.stage()))));
    }

    private static boolean differs(CompiledModel compiled, View view) {
        try {
            return compiled.dependsOnSex(view);
        } catch (ProblemsException stageIsNotRecorded) {
            return false;
        }
    }

    /** What such a look at a kit showed. */
    Shown shown(Individual kit) {
        return new Shown(
                bySex ? kit.sex() : Optional.empty(),
                kit.observations().get(0).looks().iterator().next().restrictedTo(traits));
    }

    /** The kit as if it had shown something. */
    Individual showing(Individual kit, Shown shown) {
        return shown.sex()
                .map(Noticed.bare(kit)::with)
                .orElse(Noticed.bare(kit))
                .with(new Observation(
                        Optional.empty(), stage, Set.of(shown.look()), light, Optional.empty(), Optional.empty()));
    }

    /** All that kits may show, and some that was seen; none if that is too much. */
    List<Shown> all(CompiledModel compiled, boolean misread, Collection<Shown> seen) {
        Set<Shown> all = new LinkedHashSet<>();
        for (Phenotype look : looks(compiled, misread)) {
            if (bySex) {
                all.add(new Shown(Optional.of(Sex.FEMALE), look));
                all.add(new Shown(Optional.of(Sex.MALE), look));
            } else {
                all.add(new Shown(Optional.empty(), look));
            }
        }
        all.addAll(seen);
        return all.size() > MOST_LOOKS ? List.of() : List.copyOf(all);
    }

    private Set<Phenotype> looks(CompiledModel compiled, boolean misread) {
        Set<Phenotype> looks = new LinkedHashSet<>();
        if (!misread) {
            try {
                looks.addAll(compiled.diagram(View.of(traits).at(stage)).outcomes());
            } catch (ProblemsException | TooLargeException | IllegalArgumentException notSoSimple) {
                looks.clear();
            }
        }
        if (looks.isEmpty() || looks.stream().anyMatch(look -> look.traits().size() != traits.size())) {
            looks.clear();
            looks.addAll(products(compiled.model().catalogue()));
        }
        return looks;
    }

    private List<Phenotype> products(Catalogue catalogue) {
        List<Map<String, String>> all = new ArrayList<>(List.of(new LinkedHashMap<>()));
        for (String trait : traits) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> one : all) {
                for (String state : catalogue.trait(trait).orElseThrow().states()) {
                    Map<String, String> more = new LinkedHashMap<>(one);
                    more.put(trait, state);
                    longer.add(more);
                }
            }
            all = longer;
            if (all.size() > MOST_LOOKS) {
                break;
            }
        }
        return all.stream().map(Phenotype::from).toList();
    }
}
