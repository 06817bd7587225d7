package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * What a question about recorded animals names, looked up in the model and the records. What cannot be used is noted, so that all of
 * it is told at once when the records are first asked.
 */
final class Asked {

    private final Answers answers;
    private final StringBuilder problems = new StringBuilder();
    private final Optional<NamedRecords> named;
    private final Optional<Pedigree> pedigree;
    private final Supplier<RecordedAnswers> records;

    Asked(Answers answers, PedigreeChoice choice) {
        this(answers, model -> choice.read(model), choice::about);
    }

    /**
     * Begins.
     *
     * @param answers the model and its cautions
     * @param reading reads the recorded animals and their names
     * @param about the answers about them, to be asked for when nothing is wrong
     */
    Asked(Answers answers, Function<Model, NamedRecords> reading, Function<Asked, Supplier<RecordedAnswers>> about) {
        this.answers = answers;
        List<NamedRecords> found = new ArrayList<>();
        read(() -> found.add(reading.apply(model())));
        this.named = found.stream().findFirst();
        this.pedigree = named.map(NamedRecords::pedigree);
        this.records = about.apply(this);
    }

    Model model() {
        return answers.compiled().model();
    }

    /** The answers about the recorded animals; if anything was found wrong, all of it is thrown instead. */
    RecordedAnswers records() {
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
        return records.get();
    }

    /** The rivals of the model that are at hand. */
    List<RivalModel> rivals() {
        return answers.against();
    }

    /** The pedigree as it was recorded, to be asked for when nothing is wrong. */
    Pedigree recorded() {
        return named.orElseThrow().stated();
    }

    /** Answers about the pedigree, to be asked for when nothing is wrong. */
    RecordedAnswers plain() {
        return RecordedAnswers.of(answers, named.orElseThrow());
    }

    /** What was to be read hangs on something that could not be; that was told already. */
    private static final class Missing extends IllegalStateException {
        private static final long serialVersionUID = 1;

        Missing(String problems) {
            super("asked for in spite of problems: " + problems);
        }
    }

    /**
     * Reads something now, so that what is wrong with it is told with the rest; it can be had once all is right. What needs something else
     * that could not be read is no problem of its own.
     */
    <T> Supplier<T> read(Supplier<T> reading) {
        try {
            T value = reading.get();
            return () -> value;
        } catch (InputException e) {
            problems.append(e.text());
        } catch (ProblemsException e) {
            problems.append(ProblemText.of(e.problems()));
        } catch (Missing e) {
            // told where it is missing
        }
        return () -> {
            throw new Missing(problems.toString());
        };
    }

    /** Notes a problem that concerns several options. */
    void wrong(String sentence) {
        problems.append("problem: ").append(sentence).append('\n');
    }

    /** An animal of the pedigree; a misspelt one is named with the nearest. */
    Supplier<String> animal(String option, String given) {
        return read(() -> {
            pedigree.filter(known -> !known.individuals().containsKey(given)).ifPresent(known -> {
                throw unknown(option, given, "individual", known.individuals().keySet());
            });
            return given;
        });
    }

    /** A litter of the pedigree, by its id. */
    Supplier<String> litter(String option, String given) {
        return read(() -> {
            pedigree.filter(known -> !known.litters().containsKey(given)).ifPresent(known -> {
                throw unknown(option, given, "litter", known.litters().keySet());
            });
            return given;
        });
    }

    /** The ids of all animals; missing if the pedigree could not be read. */
    Supplier<Set<String>> animals() {
        return read(() -> pedigree.map(known -> known.individuals().keySet())
                .orElseThrow(() -> new Missing(problems.toString())));
    }

    /** An allele by word or letter. */
    Supplier<HiddenAllele> allele(String option, String given) {
        return read(() -> Inputs.reading(option, given, () -> HiddenAllele.find(model(), given)));
    }

    /** Loci separated by commas; none where nothing is given. */
    Supplier<Set<String>> loci(String option, Optional<String> given) {
        return read(() -> {
            Set<String> asked = new LinkedHashSet<>(Inputs.names(given.orElse("")));
            List<Problem> found = new ArrayList<>();
            Set<String> known = model().loci().keySet();
            asked.stream()
                    .filter(locus -> !known.contains(locus))
                    .forEach(locus ->
                            found.add(Problems.unknown(Stage.REFERENCES, "unknown-locus", "", "locus", locus, known)));
            if (!found.isEmpty()) {
                throw new InputException(ProblemText.of(option, given.orElse(""), found));
            }
            return asked;
        });
    }

    private static InputException unknown(String option, String given, String what, Set<String> known) {
        Problem problem = Problems.unknown(Stage.REFERENCES, "unknown-" + what, "", what, given, known);
        return new InputException(ProblemText.of(option, given, List.of(problem)));
    }
}
