package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;

/** Reads the texts of options, so that what is wrong is said with the option's name. Stateless and thread-safe. */
final class Inputs {

    /** Stands before the light of a look. */
    private static final String IN = "in ";

    private Inputs() {}

    /** One of some words. */
    static String choice(String option, String given, String... words) {
        String word = given.strip().toLowerCase(Locale.ROOT);
        if (!List.of(words).contains(word)) {
            Problem problem = Problems.unknown(Stage.REFERENCES, "unknown-word", "", "word", given, List.of(words));
            throw new InputException(ProblemText.of(option, given, List.of(problem)));
        }
        return word;
    }

    static OmittedLoci omitted(String given) {
        return choice("--omitted", given, "unknown", "wild-type").equals("unknown")
                ? OmittedLoci.UNKNOWN
                : OmittedLoci.WILD_TYPE;
    }

    static Relation relation(String given) {
        Map<String, Relation> relations = new LinkedHashMap<>();
        for (Relation relation : Relation.values()) {
            relations.put(relation.word(), relation);
        }
        String word = choice("--relation", given, relations.keySet().toArray(String[]::new));
        return Objects.requireNonNull(relations.get(word));
    }

    static Optional<Population> population(Model model, @Nullable String given) {
        if (given == null) {
            return Optional.empty();
        }
        Population population = model.populations().get(given.strip());
        if (population == null) {
            Problem problem = model.populations().isEmpty()
                    ? Problem.of(Stage.REFERENCES, "unknown-population", "", "model " + model + " has no populations")
                    : Problems.unknown(
                            Stage.REFERENCES,
                            "unknown-population",
                            "",
                            "population",
                            given,
                            model.populations().keySet());
            throw new InputException(ProblemText.of("--population", given, List.of(problem)));
        }
        return Optional.of(population);
    }

    /** Names separated by commas. */
    static List<String> names(@Nullable String given) {
        List<String> names = new ArrayList<>();
        if (given != null) {
            for (String name : given.split(",", -1)) {
                if (!name.isBlank()) {
                    names.add(name.strip());
                }
            }
        }
        return names;
    }

    static Sex sex(String option, String given) {
        String word = choice(option, given, Sex.words().toArray(String[]::new));
        return Sex.of(word).orElseThrow();
    }

    /** A number within bounds. */
    static int count(String option, int given, int least, int most) {
        if (given < least || given > most) {
            Problem problem = Problem.of(Stage.SYNTAX, "count-out-of-range", "", given + " is no count")
                    .expecting(least + " to " + most);
            throw new InputException(ProblemText.of(option, Integer.toString(given), List.of(problem)));
        }
        return given;
    }

    static Probability chance(String option, String given) {
        return reading(option, given, () -> syntax("chance-syntax", () -> Probability.parse(given.strip())));
    }

    /** A chance that is less than 1. */
    static Probability error(String option, String given) {
        Probability found = chance(option, given);
        if (found.isOne()) {
            Problem problem = Problem.of(Stage.SYNTAX, "error-out-of-range", "", "an error of 1 is no test")
                    .expecting("0 to less than 1, for example 1/100");
            throw new InputException(ProblemText.of(option, given, List.of(problem)));
        }
        return found;
    }

    /** A look, which may state the sex too. */
    static Phenotype look(String option, Model model, String given) {
        return reading(option, given, () -> look(model, given));
    }

    private static Phenotype look(Model model, String given) {
        Phenotype look = syntax("look-syntax", () -> Phenotype.parse(given));
        Set<String> traits = new LinkedHashSet<>(look.traits());
        traits.remove(Sex.VARIABLE);
        model.catalogue().check(look.restrictedTo(traits));
        return look;
    }

    /** A look, and after an at sign when it was seen, and in which light. */
    static Sighting sighting(String option, Model model, String given) {
        return reading(option, given, () -> {
            int at = given.lastIndexOf('@');
            if (at < 0) {
                return Sighting.of(look(model, given));
            }
            return occasion(model, given.substring(at + 1), look(model, given.substring(0, at)));
        });
    }

    /** A look on an occasion: a stage, and a light after the word {@code in}. */
    static Sighting occasion(Model model, String given, Phenotype look) {
        List<String> counted = new ArrayList<>();
        Optional<String> light = Optional.empty();
        for (String part : names(given)) {
            if (part.startsWith(IN)) {
                light = Optional.of(
                        model.catalogue().checkLight(part.substring(IN.length()).strip()));
            } else {
                counted.add(part);
            }
        }
        LifeStage stage = syntax("stage-syntax", () -> LifeStage.parse(String.join(",", counted)));
        return new Sighting(model.catalogue().check(stage), look, light);
    }

    /** A stage in a season. */
    static LifeStage stage(Model model, LifeStage counted, String season) {
        return model.catalogue().check(syntax("stage-syntax", () -> counted.in(season)));
    }

    private static <T> T syntax(String code, Supplier<T> read) {
        try {
            return read.get();
        } catch (IllegalArgumentException e) {
            throw new ProblemsException(Problem.of(Stage.SYNTAX, code, "", String.valueOf(e.getMessage())));
        }
    }

    /** An animal of a genotype, looks, both or neither. */
    static Animal animal(
            CompiledModel compiled,
            String genotypeOption,
            @Nullable String genotype,
            String lookOption,
            List<String> looks,
            OmittedLoci omitted) {
        Animal animal = Animal.unknown(compiled);
        if (genotype != null) {
            Animal before = animal;
            animal = reading(genotypeOption, genotype, () -> before.withGenotype(genotype, omitted));
        }
        for (String look : looks) {
            Animal before = animal;
            Sighting seen = sighting(lookOption, compiled.model(), look);
            animal = reading(lookOption, look, () -> seen(before, seen));
        }
        return animal;
    }

    /** Says too how a stage is written, where one is lacking. */
    private static Animal seen(Animal animal, Sighting sighting) {
        try {
            return animal.seen(sighting);
        } catch (ProblemsException e) {
            throw new ProblemsException(e.problems().stream()
                    .map(found -> found.code().equals("stage-needed")
                            ? found.expecting(found.expected().orElse("a stage") + ", written after the look: \""
                                    + sighting.look() + " @ moult 2\"")
                            : found)
                    .toList());
        }
    }

    static <T> T reading(String option, String given, Supplier<T> read) {
        try {
            return read.get();
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(option, given, e.problems()));
        }
    }
}
