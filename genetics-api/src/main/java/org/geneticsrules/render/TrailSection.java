package org.geneticsrules.render;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.answer.recorded.CarrierTrail;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.Cited;
import org.geneticsrules.inference.Conclusions.Standing;

/** How likely an animal is to carry an allele, record by record. */
final class TrailSection {

    private static final int MOST_NAMED = 3;

    private final TextStyle style;

    TrailSection(TextStyle style) {
        this.style = style;
    }

    void write(CarrierTrail found, TextLines text) {
        for (CarrierTrail.Trail trail : found.trails()) {
            text.heading("Record by record, " + trail.origin());
            text.paragraph(
                    "How likely it is to carry " + style.allele(found.allele().allele()) + " at locus "
                            + style.locus(found.allele().locus())
                            + ", and by what each record multiplied the odds; records are added "
                            + (found.order() == CarrierTrail.Order.BY_DATE
                                    ? "by date."
                                    : "from parents to young, since not every one has a date."));
            TextTable table = new TextTable("Record", "Odds", "Chance").numbersFrom(1);
            table.row("before any record", "", chance(trail.before()));
            for (CarrierTrail.Step step : trail.steps()) {
                table.row(record(step.records()), factor(step), chance(step.after()));
            }
            text.lines(table.lines(style.width()));
            if (trail.steps().stream().anyMatch(step -> step.after().standing() == Standing.CONTRADICTED)) {
                text.paragraph("The records after that were not gone through.");
            }
            if (trail.still() > 0) {
                text.paragraph(trail.still() + (trail.still() == 1 ? " record moved" : " records moved") + " nothing.");
            }
        }
    }

    private static String record(List<Cited> records) {
        if (records.size() == 1) {
            return records.get(0).words();
        }
        return records.size() + " records together: "
                + records.stream().limit(MOST_NAMED).map(Cited::words).collect(Collectors.joining("; "))
                + (records.size() > MOST_NAMED ? " and so on" : "");
    }

    private static String factor(CarrierTrail.Step step) {
        if (step.factor().isPresent()) {
            return "x " + number(step.factor());
        }
        return step.after().standing() == Standing.CONTRADICTED
                ? "fits none"
                : step.after().isSettled() ? "settles it" : "";
    }

    /** As in {@code 1/2}, {@code 4} or {@code 0.371}. */
    static String number(OptionalDouble factor) {
        double odds = factor.orElseThrow();
        if (odds <= 1) {
            return Probabilities.simple(odds)
                    .map(Object::toString)
                    .orElseGet(() -> String.format(Locale.ROOT, "%.3g", odds));
        }
        return Math.abs(odds - Math.rint(odds)) < 1e-9 * odds
                ? String.format(Locale.ROOT, "%.0f", odds)
                : Probabilities.simple(1 / odds)
                        .map(inverse -> inverse.denominator() + "/" + inverse.numerator())
                        .orElseGet(() -> String.format(Locale.ROOT, "%.3g", odds));
    }

    private static String chance(Chance chance) {
        return chance.toString();
    }
}
