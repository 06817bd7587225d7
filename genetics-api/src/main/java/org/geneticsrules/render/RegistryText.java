package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Cited;
import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Recheck;
import org.geneticsrules.answer.recorded.RegistryReport.Verdict;

/**
 * The check of a registry as plain text: the result, how many animals have which verdict, what to look at again and why. Animals whose
 * records are accepted without remark are counted only; the table has them all.
 *
 * <p>Stateless and thread-safe.
 */
public final class RegistryText {

    private static final int MOST_CONFLICTS = 20;
    private static final int MOST_REASONS = 40;
    private static final int MOST_ANIMALS = 20;

    /** The inbreeding of the young of nobody related, of first cousins, of half sibs, of full sibs, and of closer lines. */
    private static final double[] INBREEDING = {0, 1.0 / 16, 1.0 / 8, 1.0 / 4, 1};

    private RegistryText() {}

    /**
     * Returns a report in a style.
     *
     * @param report a report
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(RegistryReport report, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(report.verdict());
        AnswerText.rivals(report.rivals().size(), text);
        text.heading("Animals by verdict");
        TextTable table = new TextTable("Verdict", "What it means", "Animals");
        for (Verdict verdict : Verdict.values()) {
            table.row(verdict.word(), meaning(verdict), Long.toString(report.count(verdict)));
        }
        text.lines(table.lines(style.width()));
        RecordedText.conflicts(report.conflicts().stream().limit(MOST_CONFLICTS).toList(), text);
        WhySection.more(report.conflicts().size() - MOST_CONFLICTS, "sets of records", text);
        recheck(report.recheck(), text);
        again(report, text);
        inbreeding(report, text, style.width());
        if (!report.kindreds().isEmpty()) {
            RegistryWork.write(report, text, style.width());
        }
        if (!report.notices().isEmpty()) {
            text.heading("Please note");
            report.notices().forEach(notice -> text.item(CarrySection.capital(notice) + "."));
        }
        AnswerText.changes(report.assumptions(), text);
        AnswerText.cautions(report.cautions(), text);
        AnswerText.evidence(report.evidence(), report.model(), text);
        text.paragraph("Pedigree: " + report.pedigree() + ".");
        return text.toString();
    }

    private static String meaning(Verdict verdict) {
        return switch (verdict) {
            case ACCEPT -> "the records fit all others, which does not prove them";
            case QUERY -> "one of the records named, or the model, is mistaken; which one is not known";
            case LOOK_AGAIN -> "something was recorded too early, or in a light in which it cannot be told";
            case NOT_DECIDED -> "not found out: too much ties the relatives together";
        };
    }

    private static void recheck(List<Recheck> groups, TextLines text) {
        if (groups.isEmpty()) {
            return;
        }
        text.heading("The fewest records to look at again");
        for (Recheck group : groups.stream().limit(MOST_CONFLICTS).toList()) {
            String records = group.atLeast() + (group.atLeast() == 1 ? " record" : " records");
            if (group.sets().isEmpty()) {
                text.item("Of " + group.relatives() + " related animals at least " + records
                        + "; which ones was not found out within the limits.");
                continue;
            }
            text.item("Of " + group.relatives() + " related animals " + records + "; "
                    + (group.sets().size() == 1 && !group.more()
                            ? "only this one will do:"
                            : "any one of these sets will do:"));
            for (List<Cited> set : group.sets()) {
                text.hanging("  - ", "    ", set.stream().map(Cited::words).collect(Collectors.joining("; and ")));
            }
            if (group.more()) {
                text.hanging("  ", "    ", "and further sets of as many records.");
            }
        }
        WhySection.more(groups.size() - MOST_CONFLICTS, "groups of relatives", text);
        text.paragraph("Fewest is not likeliest: one mistake may stand in several records.");
    }

    private static void inbreeding(RegistryReport report, TextLines text, int width) {
        text.heading("Inbreeding, as far as ancestors are recorded");
        TextTable table = new TextTable("Inbreeding", "Animals", "Generations known").numbersFrom(1);
        double above = -1;
        for (double most : INBREEDING) {
            double from = above;
            List<Entry> here = report.entries().stream()
                    .filter(one -> one.inbreeding() > from && one.inbreeding() <= most)
                    .toList();
            table.row(
                    most == 0 ? "0" : String.format(Locale.ROOT, "above %s to %s", share(from), share(most)),
                    Integer.toString(here.size()),
                    here.isEmpty()
                            ? "-"
                            : String.format(
                                    Locale.ROOT,
                                    "%.1f",
                                    here.stream()
                                            .mapToDouble(Entry::generations)
                                            .average()
                                            .orElse(0)));
            above = most;
        }
        text.lines(table.lines(width));
        text.blank();
        text.paragraph(
                "Where several males may be the sire, it is the expected value by their shares. The young of full sibs have 1/4, those of"
                        + " first cousins 1/16. A low number means little where few generations are"
                        + " known. What it means for a mating is for a veterinarian or an adviser on breeding to judge.");
    }

    /** As in 1/8. */
    private static String share(double part) {
        return part == 0 || part == 1 ? String.format(Locale.ROOT, "%.0f", part) : "1/" + Math.round(1 / part);
    }

    private static void again(RegistryReport report, TextLines text) {
        List<Entry> told = report.entries().stream()
                .filter(one -> one.verdict() == Verdict.LOOK_AGAIN || one.verdict() == Verdict.NOT_DECIDED)
                .toList();
        if (!told.isEmpty()) {
            text.heading("Animals to look at again");
            Map<String, List<String>> byReason = new LinkedHashMap<>();
            told.forEach(one -> byReason.computeIfAbsent(one.reason(), key -> new ArrayList<>())
                    .add("\"" + one.animal() + "\""));
            byReason.entrySet().stream()
                    .limit(MOST_REASONS)
                    .forEach(one -> text.item(named(one.getValue()) + ": " + one.getKey()));
            WhySection.more(byReason.size() - MOST_REASONS, "reasons to look again", text);
        }
    }

    /** Those of one reason; many may have it. */
    private static String named(List<String> animals) {
        String first = animals.stream().limit(MOST_ANIMALS).collect(Collectors.joining(", "));
        int more = animals.size() - MOST_ANIMALS;
        return more > 0 ? first + " and " + more + " more (the table and the document form list them all)" : first;
    }
}
