package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** What is recorded of one animal by itself, as the questions about single animals take it. */
final class OwnRecords {

    private OwnRecords() {}

    /** The animal by what was seen and reported beyond doubt; records that say nothing under the model are left out. */
    static Animal of(CompiledModel compiled, Individual individual) {
        Animal animal = Animal.unknown(compiled);
        if (individual.sex().isPresent()) {
            animal = animal.ofSex(individual.sex().get());
        }
        for (Observation seen : individual.observations()) {
            animal = seen.looks().size() == 1 ? seen(animal, seen) : animal.perhapsShowing(seen.looks());
        }
        for (GenotypeTest test : individual.tests()) {
            if (test.result().size() == 1 && test.error().isZero()) {
                animal = tested(animal, compiled, test);
            }
        }
        return animal;
    }

    private static Animal seen(Animal before, Observation seen) {
        Phenotype look = seen.looks().iterator().next();
        try {
            return before.seen(new Sighting(seen.stage(), look, seen.light()));
        } catch (ProblemsException stageNeeded) {
            Animal animal = before;
            for (String trait : look.traits()) {
                try {
                    animal = animal.seen(new Sighting(seen.stage(), look.restrictedTo(List.of(trait)), seen.light()));
                } catch (ProblemsException alone) {
                    // the engine says too that this trait is no evidence
                }
            }
            return animal;
        }
    }

    private static Animal tested(Animal animal, CompiledModel compiled, GenotypeTest test) {
        String text = test.result().iterator().next();
        String symbol = compiled.model().locus(test.locus()).symbol();
        String whole =
                text.startsWith(symbol + ":") || text.startsWith(test.locus() + ":") ? text : symbol + ":" + text;
        return animal.withGenotype(whole, OmittedLoci.UNKNOWN);
    }

    /** What an animal looked like, as far as it was recorded beyond doubt, the last look last; and each look that records leave open. */
    static List<Phenotype> looks(Animal animal) {
        List<Phenotype> looks = new ArrayList<>(animal.perhaps());
        if (!animal.looks().traits().isEmpty()) {
            looks.add(animal.looks());
        }
        return looks;
    }

    /** Why the last look of an animal leaves loci open, as far as that can be told; and what has to be said of such an animal. */
    static Optional<Answer> coat(Answers answers, Animal animal) {
        List<Sighting> seen = animal.sightings();
        Set<String> traits =
                seen.isEmpty() ? Set.of() : seen.get(seen.size() - 1).look().traits();
        try {
            return Optional.of(answers.against(List.of())
                    .coat(
                            seen.isEmpty()
                                    ? new CoatQuestion(animal, Set.of())
                                    : new CoatQuestion(
                                            animal,
                                            traits,
                                            seen.get(seen.size() - 1).stage())));
        } catch (ProblemsException | TooLargeException notTold) {
            return Optional.empty();
        }
    }

    /** What hides a locus behind the last look of an animal. */
    static Optional<Hidden> hidden(Optional<Answer> coat, Animal animal, String locus) {
        if (coat.isEmpty() || animal.sightings().isEmpty()) {
            return Optional.empty();
        }
        Phenotype seen = animal.sightings().get(animal.sightings().size() - 1).look();
        return coat.get().hidden().stream()
                .filter(one -> one.locus().equals(locus) && seen.shows(one.phenotype()))
                .findFirst();
    }
}
