package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Taxon;

/** Puts what test matings would take into one sentence. */
final class TestVerdicts {

    private final Taxon.Young young;
    private final Probability confidence;

    /**
     * Prepares sentences.
     *
     * @param young what the young are called
     * @param confidence the confidence of which the verdict speaks
     */
    TestVerdicts(Taxon.Young young, Probability confidence) {
        this.young = young;
        this.confidence = confidence;
    }

    /** What needs no test. */
    String settled(List<HiddenAllele> alleles, Predicate<HiddenAllele> carried) {
        return "By what is stated the animal "
                + alleles.stream()
                        .map(allele -> (carried.test(allele) ? "carries " : "cannot carry ") + allele.words())
                        .collect(Collectors.joining(", and "))
                + ": no test is needed.";
    }

    String of(List<HiddenAllele> open, List<TestResult> tests) {
        if (open.size() == 1) {
            return one(open.get(0), tests);
        }
        Map<HiddenAllele, TestResult> best = new LinkedHashMap<>();
        for (HiddenAllele allele : open) {
            best(allele, tests).ifPresent(test -> best.put(allele, test));
        }
        List<String> listed = new ArrayList<>();
        best.forEach((allele, test) ->
                listed.add(allele.words() + " by " + count(test.fewest().orElseThrow())));
        return "The animal may carry " + open.size() + " alleles unseen; of the test matings proposed, "
                + (listed.isEmpty()
                        ? "none would show any of them with "
                        : (listed.size() == open.size() ? "each would be shown with " : "these would be shown with "))
                + percent() + (listed.isEmpty() ? "." : ": " + String.join("; ", listed) + ".");
    }

    private String one(HiddenAllele allele, List<TestResult> tests) {
        Optional<TestResult> best = best(allele, tests);
        if (best.isPresent()) {
            TestResult test = best.get();
            String sign = test.signs().stream()
                    .limit(3)
                    .map(look -> Verdicts.words(look, test.traits()))
                    .collect(Collectors.joining(" or "));
            return "If the animal carried " + allele.words() + ", "
                    + count(test.fewest().orElseThrow()) + " by " + test.mate().name() + " would show it with at least "
                    + percent() + ": one that shows " + sign + " proves it.";
        }
        if (tests.stream().anyMatch(TestResult::lacksFrequencies)) {
            return "A test mating may show that the animal carries " + allele.words() + ", but how many " + young.many()
                    + " it takes cannot be said without frequencies.";
        }
        if (tests.stream().anyMatch(test -> !test.courses().isEmpty())) {
            return "No number of " + young.many() + " by the mates in question would show with " + percent()
                    + " that the animal carries " + allele.words() + ".";
        }
        if (tests.stream().anyMatch(test -> !test.exclusions().isEmpty())) {
            return "No mating is proposed to show whether the animal carries " + allele.words()
                    + ": every one is left out, for the reasons given.";
        }
        return "Nothing that the " + young.many()
                + " of the mates in question could show would prove that the animal carries " + allele.words() + ".";
    }

    private static Optional<TestResult> best(HiddenAllele allele, List<TestResult> tests) {
        return tests.stream()
                .filter(test -> test.allele().equals(allele) && test.fewest().isPresent())
                .min(Comparator.comparingInt(test -> test.fewest().orElseThrow()));
    }

    private String count(int number) {
        return number + " " + young.of(number);
    }

    private String percent() {
        return Probabilities.percent(confidence);
    }
}
