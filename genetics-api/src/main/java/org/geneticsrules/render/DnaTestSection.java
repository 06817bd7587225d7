package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.DnaTest.OfGenotype;
import org.geneticsrules.answer.recorded.DnaTest.Report;
import org.geneticsrules.answer.recorded.LookNext.Information;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.answer.recorded.Origin;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.Statement;

/** What a DNA test would tell. */
final class DnaTestSection {

    /** After a report so many genotypes are named, the most likely ones; the document has all. */
    private static final int MOST_LISTED = 3;

    private final TextStyle style;

    DnaTestSection(TextStyle style) {
        this.style = style;
    }

    void write(DnaTest found, TextLines text) {
        cause(found, text);
        if (found.reports().isEmpty()) {
            return; // nothing fits, so there is nothing to list but the records that do not
        }
        reports(found, text);
        carries(found, text);
        before(found, text);
        if (!found.error().isZero()) {
            after(found, text);
        }
    }

    private void cause(DnaTest found, TextLines text) {
        text.heading("What is known of a cause at " + style.locus(found.locus()));
        Set<String> said = new LinkedHashSet<>();
        for (Statement one : found.support()) {
            String claim = "[" + one.grade() + "] "
                    + one.evidence().map(Evidence::claim).orElse("No evidence is stated.");
            if (said.add(claim)) {
                text.item(claim);
                one.evidence()
                        .ifPresent(support ->
                                support.sources().forEach(source -> text.hanging("    Source: ", "      ", source)));
            }
        }
        text.item("Whether any laboratory offers a test is not known here: ask a veterinarian or a laboratory.");
    }

    private static List<String> header(String first, List<Origin> origins) {
        List<String> header = new ArrayList<>(List.of(first));
        origins.forEach(origin -> header.add(CarrySection.capital(origin.toString())));
        return header;
    }

    private void reports(DnaTest found, TextLines text) {
        text.heading("What the test may report");
        if (found.origins().isEmpty()) {
            text.paragraph("Any of "
                    + found.reports().stream()
                            .map(one -> style.pair(one.reported()))
                            .collect(Collectors.joining(", ")) + ".");
            return;
        }
        TextTable table = new TextTable(header("Reported", found.origins())).numbersFrom(1);
        for (Report one : found.reports()) {
            row(table, List.of(style.pair(one.reported())), one.chances());
        }
        text.lines(table.lines(style.width()));
        text.blank();
        text.paragraph(
                "Expected information about the genotype there, in bits (a test that halves what is left tells 1): "
                        + information(found) + ".");
    }

    private static String information(DnaTest found) {
        Set<String> bits = new LinkedHashSet<>();
        found.tells().stream().map(Information::toString).forEach(bits::add);
        List<String> each = new ArrayList<>();
        for (int i = 0; i < found.origins().size(); i++) {
            each.add(found.tells().get(i)
                    + (bits.size() > 1 ? " with " + found.origins().get(i) : ""));
        }
        return bits.size() > 1 ? String.join(", ", each) : String.join(", ", bits);
    }

    private void carries(DnaTest found, TextLines text) {
        if (found.allele().isEmpty() || found.origins().isEmpty()) {
            return;
        }
        text.heading("Whether it carries " + found.allele().get().words());
        TextTable table = new TextTable(header("What is reported", found.origins())).numbersFrom(1);
        row(table, List.of("without the test"), found.before().carries());
        for (Report one : found.reports()) {
            row(table, List.of(style.pair(one.reported())), one.after().carries());
        }
        text.lines(table.lines(style.width()));
    }

    private void before(DnaTest found, TextLines text) {
        text.heading("Its genotype without the test");
        List<String> header = header("Genotype", found.origins());
        header.add(1, "By all records");
        TextTable table = new TextTable(header).numbersFrom(2);
        for (OfGenotype one : found.before().genotypes()) {
            if (one.whether() != Whether.EXCLUDED) {
                row(table, List.of(style.pair(one.pair()), one.whether().word()), one.chances());
            }
        }
        text.lines(table.lines(style.width()));
    }

    private void after(DnaTest found, TextLines text) {
        text.heading("Its genotype after each report, with errors in " + found.error() + " of cases");
        List<String> header = header("Reported", found.origins());
        header.add(1, "Then it has");
        TextTable table = new TextTable(header).numbersFrom(2);
        for (Report report : found.reports()) {
            List<OfGenotype> left = report.after().genotypes().stream()
                    .filter(one -> one.whether() != Whether.EXCLUDED)
                    .sorted(Comparator.comparingDouble(one -> -mean(one)))
                    .toList();
            String reported = style.pair(report.reported());
            for (OfGenotype one : left.subList(0, Math.min(left.size(), MOST_LISTED))) {
                row(table, List.of(reported, style.pair(one.pair())), one.chances());
                reported = "";
            }
            if (left.size() > MOST_LISTED) {
                List<String> cells = new ArrayList<>(List.of("", "any other"));
                for (int i = 0; i < found.origins().size(); i++) {
                    cells.add(rest(left.subList(MOST_LISTED, left.size()), i));
                }
                table.row(cells);
            }
        }
        text.lines(table.lines(style.width()));
    }

    private static double mean(OfGenotype one) {
        return one.chances().stream()
                .flatMapToDouble(chance -> chance.value().stream())
                .average()
                .orElse(0);
    }

    /** How likely any of some genotypes is, for one origin. */
    private static String rest(List<OfGenotype> some, int origin) {
        Chance first = some.get(0).chances().get(origin);
        double sum = some.stream()
                .flatMapToDouble(one -> one.chances().get(origin).value().stream())
                .sum();
        return first.isSettled() ? Probabilities.words(Math.min(1, sum)) : words(first);
    }

    private static void row(TextTable table, List<String> words, List<Chance> chances) {
        List<String> cells = new ArrayList<>(words);
        chances.forEach(one -> cells.add(words(one)));
        table.row(cells);
    }

    private static String words(Chance one) {
        boolean never = !one.isSettled() && one.standing() == Standing.EXACT;
        return never ? "never reported" : one.toString();
    }
}
