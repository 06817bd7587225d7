package org.geneticsrules.answer.described;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.described.Description.Fit;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * Whether readings can all be of one animal, and if not, some of them of which each is needed for that.
 *
 * <p>A set of readings without which the others fit is found by leaving out one after the other, as long as the rest still contradict each
 * other (the deletion filter of Chinneck & Dravnieks 1991, ORSA Journal on Computing 3:157); it is irreducible, and need not be the smallest.
 */
final class OneAnimal {

    private static final String NOT_FOUND_OUT = "whether all that was seen can be of one animal is not found out: ";

    private final CompiledModel compiled;
    private final Optional<Sex> sex;
    private final List<Reading> ruled;
    private final Fit fit;
    private final List<Reading> apart;
    private final Set<String> statements = new LinkedHashSet<>();

    OneAnimal(CompiledModel compiled, Optional<Sex> sex, List<Reading> readings, Collection<String> notices) {
        this.compiled = compiled;
        this.sex = sex;
        List<Reading> judged = readings.stream()
                .filter(one -> one.counts() && one.unruled().isEmpty())
                .toList();
        Set<String> lacking = new LinkedHashSet<>();
        this.ruled = judged.stream().filter(one -> isDated(one, lacking)).toList();
        Fit found;
        List<Reading> needed = List.of();
        try {
            found = judged.isEmpty()
                    ? Fit.NO_CLAIM
                    : !ruled.isEmpty() && !fits(ruled)
                            ? Fit.NOT_ONE_ANIMAL
                            : ruled.size() < judged.size() ? Fit.NOT_FOUND_OUT : Fit.ONE_ANIMAL;
            if (found == Fit.NOT_ONE_ANIMAL) {
                needed = irreducible();
            }
            if (found == Fit.NOT_FOUND_OUT) {
                notices.addAll(lacking);
            } else {
                rest(needed.isEmpty() ? ruled : needed);
            }
        } catch (TooLargeException e) {
            found = Fit.NOT_FOUND_OUT;
            needed = List.of();
            statements.clear();
            notices.add(NOT_FOUND_OUT + e.getMessage());
        }
        this.fit = found;
        this.apart = needed;
    }

    /** Whether the stage of a reading states all that its trait depends on; what it lacks is noted. */
    private boolean isDated(Reading one, Collection<String> lacking) {
        try {
            Animal.unknown(compiled).seen(new Sighting(one.stage(), Phenotype.of(one.trait(), one.state())));
            return true;
        } catch (ProblemsException e) {
            for (Problem problem : e.problems()) {
                lacking.add(NOT_FOUND_OUT
                        + problem.message()
                        + problem.expected().map(more -> "; expected " + more).orElse(""));
            }
            return false;
        }
    }

    Fit fit() {
        return fit;
    }

    List<Reading> apart() {
        return apart;
    }

    /** What it rests on: of a contradiction, what the readings in it rest on; else what all do. */
    Set<String> statements() {
        return statements;
    }

    private void rest(List<Reading> some) {
        GenotypeSet all =
                sex.map(known -> GenotypeSet.all(compiled.model()).of(known)).orElse(GenotypeSet.all(compiled.model()));
        for (Reading one : some) {
            View view = new View(List.of(one.trait()), one.stage(), Census.CONCEIVED);
            Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
            compiled.lociRead(view).forEach(locus -> pairs.put(locus, all.pairs(locus)));
            statements.addAll(RestsOn.of(compiled, pairs, view).statements());
        }
    }

    private List<Reading> irreducible() {
        List<Reading> left = new ArrayList<>(ruled);
        for (Reading one : ruled) {
            List<Reading> without = new ArrayList<>(left);
            without.remove(one);
            if (!without.isEmpty() && !fits(without)) {
                left = without;
            }
        }
        return left;
    }

    private boolean fits(List<Reading> some) {
        Map<LifeStage, List<Map<String, String>>> looks = new LinkedHashMap<>();
        for (Reading one : some) {
            // two looks may be of one stage and read a trait differently
            List<Map<String, String>> there = looks.computeIfAbsent(one.stage(), stage -> new ArrayList<>());
            Map<String, String> free = there.stream()
                    .filter(look -> !look.containsKey(one.trait()))
                    .findFirst()
                    .orElseGet(() -> {
                        Map<String, String> next = new LinkedHashMap<>();
                        there.add(next);
                        return next;
                    });
            free.put(one.trait(), one.state());
        }
        Animal animal = Animal.unknown(compiled);
        for (Sex known : sex.stream().toList()) {
            animal = animal.ofSex(known);
        }
        for (Map.Entry<LifeStage, List<Map<String, String>>> at : looks.entrySet()) {
            for (Map<String, String> look : at.getValue()) {
                animal = animal.seen(new Sighting(at.getKey(), Phenotype.from(look)));
            }
        }
        return !animal.genotypes().isEmpty();
    }
}
