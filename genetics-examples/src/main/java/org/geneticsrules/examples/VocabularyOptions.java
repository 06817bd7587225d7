package org.geneticsrules.examples;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Vocabulary;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options that questions about names have in common: one's own vocabulary, and when and of whom something was said. */
final class VocabularyOptions {

    @Mixin
    private OwnVocabularies own;

    @Option(
            names = "--on",
            paramLabel = "DATE",
            description = {
                "The day of the record, such as 1999-05-30; a month or a year stands for its first day.",
                "Default: an animal gets today's names; a name may have been said at any time."
            })
    private @Nullable String on;

    @Option(names = "--sex", paramLabel = "SEX", description = "The animal's sex: female or male. Default: not known.")
    private @Nullable String sex;

    @Mixin
    private StageOptions when;

    /** All vocabularies about the traits of a model. */
    List<Vocabulary> all(Model model) {
        return own.all(model);
    }

    /** One of the vocabularies: by its id, by the last part of it, or by its region. */
    Vocabulary one(String option, String given, Model model) {
        List<Vocabulary> known = all(model);
        List<Vocabulary> found = known.stream()
                .filter(one -> one.id().equals(given)
                        || one.id().endsWith("." + given)
                        || one.region().filter(given::equalsIgnoreCase).isPresent())
                .toList();
        if (found.size() == 1) {
            return found.get(0);
        }
        Problem problem = Problem.of(
                        Stage.REFERENCES, "unknown-vocabulary", "", "no one vocabulary is called \"" + given + "\"")
                .expecting("one of "
                        + String.join(", ", known.stream().map(Vocabulary::id).toList()));
        throw new InputException(ProblemText.of(option, given, List.of(problem)));
    }

    Occasion occasion(Model model) {
        LifeStage stage = when.stage(model);
        Occasion occasion = Occasion.unstated().at(stage);
        Optional<LocalDate> day = day("--on", on);
        if (day.isPresent()) {
            occasion = occasion.on(day.get());
        }
        String stated = sex;
        if (stated != null) {
            Sex known = Inputs.sex("--sex", stated);
            occasion = occasion.of(known);
        }
        return occasion;
    }

    static Optional<LocalDate> day(String option, @Nullable String given) {
        if (given == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(PartialDate.parse(given.strip()).first());
        } catch (IllegalArgumentException e) {
            Problem problem = Problem.of(Stage.SYNTAX, "date-syntax", "", "\"" + given + "\" is no date")
                    .expecting("a year, a month or a day, such as 1999, 1999-05 or 1999-05-30");
            throw new InputException(ProblemText.of(option, given, List.of(problem)));
        }
    }
}
