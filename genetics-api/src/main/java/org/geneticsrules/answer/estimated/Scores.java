package org.geneticsrules.answer.estimated;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.LodScores;

/** What LOD scores add to an answer about recombination. */
final class Scores {

    private Scores() {}

    static void add(LodScores scores, Estimate estimate, Map<String, List<String>> open, Draft draft) {
        LinkageScores linkage = LinkageScores.of(scores, estimate.value(), open);
        draft.linkage = Optional.of(linkage);
        draft.tests.add(EstimateTest.of("the loci are not linked, a fraction of 1/2", scores.linkage()));
        draft.more.add("The highest LOD score is " + Words.number(scores.highest()) + ": by convention "
                + (linkage.verdict() == LodScores.Verdict.FOR_LINKAGE
                        ? "3 or more speaks for linkage, if the two loci were named beforehand."
                        : "neither for linkage, for which 3 is asked, nor against it."));
        if (!open.isEmpty()) {
            draft.notices.add("the phase of a parent is not known in "
                    + open.entrySet().stream()
                            .map(one -> one.getKey()
                                    + (one.getValue().isEmpty() ? "" : " (" + String.join(", ", one.getValue()) + ")"))
                            .collect(Collectors.joining("; "))
                    + "; such a family says less than one of known phase, and its records fit a few recombinants and their"
                    + " opposite alike");
        }
    }
}
