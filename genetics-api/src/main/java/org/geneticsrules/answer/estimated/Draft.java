package org.geneticsrules.answer.estimated;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.estimation.Estimate;

/** An answer about a number while it is put together. Not thread-safe. */
final class Draft {

    /** With fewer that decide an estimate, approximate intervals hold the truth too seldom (coverage.txt beside the tests of the engine). */
    private static final int FEW = 10;

    private final String question;
    final List<String> given = new ArrayList<>();
    final List<EstimatedNumber> numbers = new ArrayList<>();
    final List<Reckoning> reckonings = new ArrayList<>();
    final List<EstimateTest> tests = new ArrayList<>();
    final Map<String, Assumption> taken = new TreeMap<>();
    final Set<String> notices = new LinkedHashSet<>();
    final List<String> more = new ArrayList<>();
    /** Said in place of the sentence on the first number, where the counts go with no value of it; empty else. */
    String headline = "";

    Optional<LinkageScores> linkage = Optional.empty();
    List<Caution> cautions = List.of();
    EvidenceLevel evidence = EvidenceLevel.of(List.of());
    Optional<Reference> model = Optional.empty();
    Optional<Reference> pedigree = Optional.empty();

    Draft(String question) {
        this.question = question;
    }

    void assume(String id, String text, String otherwise) {
        taken.put(id, new Assumption(id, text, otherwise));
    }

    /** A number, with what its engine says should be known of it. */
    EstimatedNumber number(EstimatedNumber number) {
        numbers.add(number);
        for (String note : number.estimate().notes()) {
            // what is taken for granted is told as an assumption, and what the verdict tells is not told twice
            if (!note.contains("taken to")
                    && !note.startsWith("the estimate is the ")
                    && !number.estimate().flat()) {
                notices.add(note.endsWith(".") ? note.substring(0, note.length() - 1) : note);
            }
        }
        return number;
    }

    /** The same for an engine that gives both intervals. */
    EstimatedNumber number(String words, Estimate profile, Estimate exact) {
        return number(new EstimatedNumber(
                words,
                new Estimate(
                        profile.value(),
                        profile.standardError(),
                        profile.interval(),
                        profile.logLikelihood(),
                        profile.atBoundary(),
                        profile.flat(),
                        exact.notes()),
                Optional.of(exact.interval())));
    }

    /** Where recombinants are few, how often the approximate interval was right was counted. */
    void fewRecombinants(double expected) {
        if (expected < FEW) {
            notices.add("about " + Words.number(expected)
                    + " recombinants are expected at the estimate; with so few an interval by profile likelihood holds the"
                    + " true fraction too seldom: of 40 young of a test cross at a fraction of 1/20 in 86 samples of 100, where"
                    + " it says 95 (the library keeps the table, estimation/coverage.txt). The exact interval holds it at"
                    + " least as often as it says");
        }
    }

    /** Where few things decide an estimate and no exact interval stands beside it. */
    void few(long number, String one, String many) {
        if (number > 0 && number < FEW) {
            notices.add("only " + Words.counted(number, one + " decides", many + " decide")
                    + " this; how often an approximate interval holds the truth with so few was not counted, and where it"
                    + " was, of recombination, it held it too seldom (the library keeps the table, estimation/coverage.txt)."
                    + " Take it as rough");
        }
    }

    /** The verdict is on the first number, and on what was added. */
    EstimateAnswer answer() {
        EstimatedNumber first = numbers.get(0);
        if (first.estimate().flat()) {
            tests.clear();
        }
        boolean informative = numbers.stream().anyMatch(one -> !one.estimate().flat());
        List<String> sentences = new ArrayList<>();
        if (first.estimate().atBoundary()) {
            notices.add(
                    "an estimate at an end has no standard error, and the truth may well lie away from it: go by the"
                            + " interval");
        }
        sentences.add(headline.isEmpty() ? Words.verdict(first) : headline);
        if (informative) {
            sentences.addAll(more);
        }
        notices.add(
                "a number is no advice: nothing here says that a mating is advisable, and no mating is to be made or"
                        + " repeated only to learn from it, where hearing, health or inbreeding speak against it. Ask a"
                        + " veterinarian, and keep to the law of the place");
        return new EstimateAnswer(
                question,
                String.join(" ", sentences),
                informative,
                given,
                numbers,
                reckonings,
                tests,
                linkage,
                List.copyOf(taken.values()),
                Answers.rivals(evidence),
                cautions,
                evidence,
                model,
                pedigree,
                List.copyOf(notices));
    }
}
