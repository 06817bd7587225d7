package org.geneticsrules.examples;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Nearest;
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
                "The day of the record, such as 1999-05-30; or the month or year, of which any day is allowed for.",
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
        List<Vocabulary> meant = found.isEmpty() ? known : found;
        Problem problem = Problem.of(
                        Stage.REFERENCES,
                        found.isEmpty() ? "unknown-vocabulary" : "several-vocabularies",
                        "",
                        (found.isEmpty() ? "no vocabulary is" : "several vocabularies are") + " called \"" + given
                                + "\"")
                .expecting("one of "
                        + String.join(
                                ", ",
                                meant.stream().map(VocabularyOptions::described).toList()))
                .near(found.isEmpty() ? Nearest.to(given, calledSo(known)) : Optional.empty());
        throw new InputException(ProblemText.of(option, given, List.of(problem)));
    }

    /** Everything that {@link #one} takes for a vocabulary, the shorter first. */
    private static List<String> calledSo(List<Vocabulary> known) {
        Set<String> all = new LinkedHashSet<>();
        known.forEach(one -> one.region().ifPresent(all::add));
        known.forEach(one -> all.add(one.id().substring(one.id().lastIndexOf('.') + 1)));
        known.forEach(one -> all.add(one.id()));
        return List.copyOf(all);
    }

    private static String described(Vocabulary one) {
        return one.id() + one.region().map(region -> " (\"" + region + "\")").orElse("");
    }

    Occasion occasion(Model model) {
        LifeStage stage = when.stage(model);
        Occasion occasion = Occasion.unstated().at(stage);
        Optional<PartialDate> date = date("--on", on);
        if (date.isPresent()) {
            occasion = occasion.on(date.get());
        }
        String stated = sex;
        if (stated != null) {
            Sex known = Inputs.sex("--sex", stated);
            occasion = occasion.of(known);
        }
        return occasion;
    }

    static Optional<PartialDate> date(String option, @Nullable String given) {
        if (given == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(PartialDate.parse(given.strip()));
        } catch (IllegalArgumentException e) {
            Problem problem = Problem.of(Stage.SYNTAX, "date-syntax", "", "\"" + given + "\" is no date")
                    .expecting("a year, a month or a day, such as 1999, 1999-05 or 1999-05-30");
            throw new InputException(ProblemText.of(option, given, List.of(problem)));
        }
    }
}
