package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;

/**
 * What all questions about one pedigree rest on.
 *
 * @param answers the model and its cautions
 * @param pedigree the recorded animals
 * @param population the population of founders for whom the pedigree states none, if one is named
 * @param confusions how often a state is recorded as another
 * @param engine the questions of the engine with these naming errors, within what tables may take together
 * @param names what the names say that animals were called by, if they were read
 * @param sampling how numbers are estimated that are too large to be calculated, if they are
 */
record Ground(
        Answers answers,
        Pedigree pedigree,
        Optional<String> population,
        Confusions confusions,
        Inference engine,
        Optional<NamedRecords> names,
        Optional<Sampling> sampling) {

    CompiledModel compiled() {
        return answers.compiled();
    }

    Model model() {
        return compiled().model();
    }

    Ground of(Pedigree part) {
        return new Ground(answers, part, population, confusions, engine, names, sampling);
    }

    Ground from(String named) {
        return new Ground(answers, pedigree, Optional.of(named), confusions, engine, names, sampling);
    }

    Ground with(Confusions named) {
        return new Ground(answers, pedigree, population, named, engine.with(named), names, sampling);
    }

    Ground within(double cells) {
        return new Ground(answers, pedigree, population, confusions, engine.within(cells), names, sampling);
    }

    Ground sampling(Sampling how) {
        return new Ground(answers, pedigree, population, confusions, engine, names, Optional.of(how));
    }

    /** The same questions under another model that rules all traits recorded; nothing is estimated there. */
    Ground under(Answers other) {
        Model there = other.compiled().model();
        Set<String> recorded = new LinkedHashSet<>();
        for (Individual one : pedigree.individuals().values()) {
            one.observations().forEach(seen -> recorded.addAll(seen.traits()));
        }
        recorded.retainAll(model().visibleTraits());
        Animal.requireClaims(recorded, there);
        population.filter(id -> !there.populations().containsKey(id)).ifPresent(id -> {
            throw unknown("population", id, there.populations().keySet());
        });
        return new Ground(
                other,
                pedigree,
                population,
                confusions,
                engine.about(pedigree).under(other.compiled()),
                names,
                Optional.empty());
    }

    /** Refuses a model that lacks a locus which another one was asked about; an unknown one is named with the nearest where it is used. */
    void requireLoci(Collection<String> loci, Ground asked) {
        loci.stream()
                .filter(locus -> !model().loci().containsKey(locus)
                        && asked.model().loci().containsKey(locus))
                .findFirst()
                .ifPresent(locus -> {
                    throw unknown("locus", locus, model().loci().keySet());
                });
    }

    private static ProblemsException unknown(String what, String name, Set<String> known) {
        return new ProblemsException(Problems.unknown(Stage.REFERENCES, "unknown-" + what, "", what, name, known));
    }

    /** The questions of the engine, without a population. */
    Inference inference(Pedigree records) {
        return engine.about(records);
    }

    /**
     * Asks something that needs frequencies: by the population named, by those that the pedigree states, or by each of the model in turn.
     *
     * @param records the pedigree it is asked of
     * @param question the question
     * @param notices takes what could not be weighed, and why
     */
    <T> List<Weighed<T>> weigh(Pedigree records, Function<Inference, T> question, Set<String> notices) {
        return weigh(origin -> question.apply(estimating(records, origin)), notices);
    }

    /** Asks something that needs frequencies, of any pedigrees. */
    <T> List<Weighed<T>> weigh(Function<Origin, T> question, Set<String> notices) {
        if (population.isPresent()) {
            Origin named = origin(population.get());
            return List.of(new Weighed<>(named, question.apply(named)));
        }
        try {
            Origin stated = new Origin(Optional.empty());
            return List.of(new Weighed<>(stated, question.apply(stated)));
        } catch (ProblemsException e) {
            throwUnlessFrequenciesLack(e);
        }
        List<Weighed<T>> found = new ArrayList<>();
        for (String id : model().populations().keySet()) {
            try {
                found.add(new Weighed<>(origin(id), question.apply(origin(id))));
            } catch (ProblemsException e) {
                throwUnlessFrequenciesLack(e);
                notices.add("population \"" + id + "\" names no frequencies for all loci that matter here");
            }
        }
        if (found.isEmpty()) {
            notices.add("no population of the model has the frequencies that a weighted answer needs");
        }
        return found;
    }

    /** The same, where numbers that are too large to be calculated are estimated if that was asked for. */
    Inference estimating(Pedigree records, Origin origin) {
        Inference inference = inference(records, origin);
        return sampling.map(inference::sampling).orElse(inference);
    }

    /** The questions of the engine, with founders as in an origin. */
    Inference inference(Pedigree records, Origin origin) {
        Inference inference = inference(records);
        return origin.assumed().map(one -> inference.from(one.id())).orElse(inference);
    }

    private Origin origin(String id) {
        return new Origin(Optional.of(population(id)));
    }

    Population population(String id) {
        return Objects.requireNonNull(model().populations().get(id), id);
    }

    private static void throwUnlessFrequenciesLack(ProblemsException e) {
        if (!e.problems().stream().allMatch(problem -> problem.code().equals("population-needed"))) {
            throw e;
        }
    }

    /** The populations that founders are weighed by: those assumed, and those stated. */
    Set<Population> used(List<Origin> origins) {
        Set<Population> used = new LinkedHashSet<>();
        origins.forEach(origin -> origin.assumed().ifPresent(used::add));
        if (!origins.isEmpty()) {
            pedigree.individuals()
                    .values()
                    .forEach(one -> one.population()
                            .map(id -> model().populations().get(id))
                            .ifPresent(used::add));
        }
        return used;
    }
}
