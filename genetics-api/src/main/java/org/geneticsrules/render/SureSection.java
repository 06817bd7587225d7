package org.geneticsrules.render;

import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.HowSure;
import org.geneticsrules.trait.Taxon;

/** Three kinds of sure, side by side. */
final class SureSection {

    private final TextStyle style;
    private final Taxon.Young young;

    SureSection(TextStyle style, Taxon.Young young) {
        this.style = style;
        this.young = young;
    }

    void write(HowSure found, TextLines text) {
        String signs = found.signs().stream().map(Object::toString).collect(Collectors.joining(" or "));
        for (HowSure.Course course : found.courses()) {
            text.heading("Three kinds of sure, " + course.origin());
            text.paragraph("Now it carries " + style.allele(found.allele().allele()) + " with a chance of "
                    + course.now() + ". Sign: " + young.any() + " that shows " + signs + ".");
            TextTable table = new TextTable(
                            CarrySection.capital(young.many()),
                            "Shown if it carries it",
                            "Carries it, if none shows",
                            "At least one shows")
                    .numbersFrom(0);
            for (HowSure.Row row : course.rows()) {
                table.row(
                        Integer.toString(row.kits()),
                        told(row.detected()),
                        told(row.carries()),
                        told(row.atLeastOne()));
            }
            text.lines(table.lines(style.width()));
        }
        if (!found.courses().isEmpty()) {
            text.blank();
            text.item(
                    "\"Shown if it carries it\" is how good the test is; it says nothing of how likely it is to carry.");
            text.item("\"Carries it, if none shows\" is what is left to believe after so many without a sign.");
            text.item(
                    "\"At least one shows\" is what to expect of the next " + young.many() + " by what is known now.");
        }
    }

    private static String told(Chance chance) {
        return switch (chance.standing()) {
            case EXACT, SAMPLED -> chance.toString();
            case NOT_CONVERGED -> "not sure enough";
            case TOO_LARGE -> "too large";
            case NOT_IN_TIME -> "not in time";
            case CONTRADICTED -> "cannot be";
        };
    }
}
