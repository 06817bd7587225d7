package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LookNext.Whether;

/** Says in a sentence or two what an animal may show at a stage of its life. */
final class LaterWords {

    /** Traits are named up to this number where all were asked for. */
    private static final int MOST_NAMED = 6;

    /** Chances that differ by less are the same but for rounding. */
    private static final double SAME = 1e-9;

    private final Later found;
    private final boolean byName;

    LaterWords(Later found, boolean byName) {
        this.found = found;
        this.byName = byName;
    }

    /** Numbers are left to the table, so that rival models which leave the same range agree. */
    String verdict(boolean contradicted) {
        String who = RecordWords.quoted(found.animal());
        if (contradicted) {
            return "The records of " + who
                    + " and its relatives cannot all be true under this model, so that nothing follows from them for "
                    + found.stage() + ". Re-examine the records named, or the model.";
        }
        List<OfTrait> open = with(Word.MAY_SHOW, Word.UNDECIDED);
        List<OfTrait> certain = with(Word.SHOWS);
        if (open.isEmpty() && certain.isEmpty()) {
            return nothing(who);
        }
        List<String> parts = new ArrayList<>();
        int most = byName ? found.traits().size() : MOST_NAMED;
        String may = open.stream().limit(most).map(this::range).collect(Collectors.joining("; "));
        String shows = certain.stream()
                .limit(Math.max(0, most - open.size()))
                .map(row -> row.trait() + " " + row.left().get(0).state())
                .collect(Collectors.joining(", "));
        if (!may.isEmpty()) {
            parts.add("may show " + may);
        }
        if (!shows.isEmpty()) {
            parts.add("shows " + shows);
        }
        int more = open.size() + certain.size() - most;
        return "At " + found.stage() + ", by all records, " + who + " " + String.join("; it ", parts)
                + (more > 0 ? "; the table tells of " + more + " more" : "") + "." + noClaim();
    }

    private List<OfTrait> with(Word... words) {
        return found.traits().stream()
                .filter(row -> List.of(words).contains(row.word()))
                .toList();
    }

    private static String names(List<OfTrait> rows) {
        return rows.stream()
                .map(row ->
                        row.trait() + row.when().map(when -> " (" + when + ")").orElse(""))
                .collect(Collectors.joining(", "));
    }

    private String nothing(String who) {
        List<OfTrait> later = with(Word.NOT_YET, Word.STAGE_NEEDED);
        return later.isEmpty()
                ? "What " + who + " may show at " + found.stage() + " cannot be said." + noClaim()
                : "Nothing of " + who + " can be told at " + found.stage() + "; look again at " + names(later) + "."
                        + noClaim();
    }

    private String noClaim() {
        List<OfTrait> silent = with(Word.NO_CLAIM);
        return silent.isEmpty() || !byName
                ? ""
                : " The model makes no claim about "
                        + silent.stream().map(OfTrait::trait).collect(Collectors.joining(", "))
                        + " for some of what it may carry.";
    }

    /** As in "white guard hairs from scattered to about half, most likely mostly coloured". */
    private String range(OfTrait row) {
        Set<String> left = new LinkedHashSet<>();
        row.left().forEach(one -> left.add(one.state()));
        List<String> open = row.states().stream()
                .filter(one -> one.whether() == Whether.UNDECIDED)
                .map(OfState::state)
                .toList();
        return row.trait() + " " + (row.ordered() ? runs(row, left) : String.join(" or ", left)) + likely(row)
                + (open.isEmpty() ? "" : " (not found out whether " + String.join(" or ", open) + ")");
    }

    /** States in an order of degree: what lies between the ends of a range is left too. */
    private static String runs(OfTrait row, Set<String> left) {
        List<String> said = new ArrayList<>();
        List<String> run = new ArrayList<>();
        for (OfState one : row.states()) {
            if (left.contains(one.state())) {
                run.add(one.state());
            } else {
                said.addAll(said(run));
                run.clear();
            }
        }
        said.addAll(said(run));
        return String.join(" or ", said);
    }

    private static List<String> said(List<String> run) {
        return run.size() < 3 ? List.copyOf(run) : List.of("from " + run.get(0) + " to " + run.get(run.size() - 1));
    }

    /** What is likeliest by every origin; nothing where a chance is not worked out by one, since that may be the greatest. */
    private String likely(OfTrait row) {
        if (row.left().stream().anyMatch(one -> !one.chances().stream().allMatch(Chance::isSettled))) {
            return "";
        }
        Set<Set<String>> best = new LinkedHashSet<>();
        for (int i = 0; i < found.origins().size(); i++) {
            Set<String> most = new LinkedHashSet<>();
            double greatest = 0;
            for (OfState one : row.left()) {
                double chance = one.chances().get(i).value().orElse(0);
                if (chance > greatest + SAME) {
                    most.clear();
                    greatest = chance;
                }
                if (chance > greatest - SAME && chance > 0) {
                    most.add(one.state());
                }
            }
            if (!most.isEmpty()) {
                best.add(most);
            }
        }
        int left = row.left().size();
        if (best.isEmpty() || left < 2) {
            return "";
        }
        return best.size() > 1
                ? ", and which is likeliest hangs on how common alleles are"
                : best.iterator().next().size() == left
                        ? (left == 2 ? ", each as likely as the other" : ", all equally likely")
                        : ", most likely " + String.join(" or ", best.iterator().next());
    }
}
