package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.LookNext.OfState;
import org.geneticsrules.answer.recorded.LookNext.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Word;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.problem.Pointer;

/** Says in a sentence or two what should be looked at next. */
final class LookNextWords {

    private final Ground ground;
    private final LookNext found;

    LookNextWords(Ground ground, LookNext found) {
        this.ground = ground;
        this.found = found;
    }

    /** The numbers are left to the table, so that rival models which would look at the same agree. */
    String verdict(boolean contradicted) {
        String who = RecordWords.quoted(found.animal());
        if (contradicted) {
            return "The records of " + who
                    + " and its relatives cannot all be true under this model, so that no look can be weighed by them."
                    + " Re-examine the records named, or the model.";
        }
        if (found.origins().isEmpty()) {
            return "Which look at " + who + " tells most cannot be said without frequencies.";
        }
        List<OfTrait> best = found.best();
        if (!best.isEmpty()) {
            return next(best, who);
        }
        if (!with(Word.UNDECIDED).isEmpty()) {
            return "Which look at " + who + " tells most was not worked out: it would take more room than allowed.";
        }
        List<OfTrait> later = new ArrayList<>(with(Word.NOT_YET));
        later.addAll(with(Word.STAGE_NEEDED));
        if (!later.isEmpty()) {
            return "Nothing that can be told of " + who + " now tells more of what it may carry; look again at "
                    + later.stream()
                            .map(row -> row.trait()
                                    + row.when().map(when -> " (" + when + ")").orElse(""))
                            .collect(Collectors.joining(", "))
                    + ".";
        }
        return nothingMore(who);
    }

    private List<OfTrait> with(Word word) {
        return found.traits().stream().filter(row -> row.word() == word).toList();
    }

    private static String next(List<OfTrait> best, String who) {
        String named = best.stream().map(OfTrait::trait).collect(Collectors.joining(" or "));
        String states = best.get(0).states().stream().map(OfState::state).collect(Collectors.joining(" or "));
        return "Look at " + named + " next: of all that can be told at that stage it is expected to tell most of what "
                + who
                + " may carry"
                + (best.size() > 1 ? ", each as much as the other" : "; it may show " + states)
                + ".";
    }

    /** Looks are at an end: either all is known that they can tell, or other evidence is needed. */
    private String nothingMore(String who) {
        List<String> open = found.classes().stream()
                .filter(at -> at.left().size() > 1)
                .map(LookNext.AtLocus::locus)
                .toList();
        if (open.isEmpty()) {
            return "Looks tell no more of " + who + ": what it is, as far as looks can tell it, is known.";
        }
        Set<String> tested = new LinkedHashSet<>(open);
        tested.removeIf(locus -> !isMolecular(locus));
        return "Looks cannot tell further what " + who + " is at " + String.join(", ", open)
                + "; records of relatives may"
                + (tested.isEmpty()
                        ? ""
                        : ", and so may a DNA test at " + String.join(", ", tested)
                                + ", where a cause is on record in the DNA")
                + ".";
    }

    private boolean isMolecular(String locus) {
        String prefix = Pointer.of("loci", locus);
        return ground.model().statements().values().stream()
                .anyMatch(statement -> statement.grade() == Grade.MOLECULAR
                        && (statement.pointer().equals(prefix)
                                || statement.pointer().startsWith(prefix + "/")));
    }
}
