package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.NextLitter;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Taxon;

/** What the next litter may show. */
final class NextLitterSection {

    private final TextStyle style;
    private final Taxon.Young young;

    NextLitterSection(TextStyle style, Taxon.Young young) {
        this.style = style;
        this.young = young;
    }

    void write(NextLitter found, TextLines text) {
        if (found.courses().isEmpty()) {
            return;
        }
        text.heading("The next " + young.one());
        Set<Phenotype> looks = new LinkedHashSet<>();
        found.courses().forEach(course -> looks.addAll(course.looks().keySet()));
        TextTable table = new TextTable(header("Look", found)).numbersFrom(1);
        for (Phenotype look : looks) {
            List<String> cells = new ArrayList<>(List.of(Looks.words(look, look.traits())));
            found.courses()
                    .forEach(course ->
                            cells.add(course.looks().getOrDefault(look, NEVER).toString()));
            table.row(cells);
        }
        text.lines(table.lines(style.width()));
        found.look().ifPresent(look -> counts(found, look, text));
    }

    private static final Chance NEVER = new Chance(Standing.EXACT, OptionalDouble.of(0), OptionalDouble.empty());

    private static List<String> header(String first, NextLitter found) {
        List<String> header = new ArrayList<>(List.of(first));
        found.courses()
                .forEach(course ->
                        header.add(CarrySection.capital(course.origin().toString())));
        return header;
    }

    private void counts(NextLitter found, Phenotype look, TextLines text) {
        text.heading("How many of " + found.kits() + " " + young.of(found.kits()) + " show " + look);
        TextTable table = new TextTable(header(CarrySection.capital(young.many()), found)).numbersFrom(0);
        for (int k = 0; k <= found.kits(); k++) {
            List<String> cells = new ArrayList<>(List.of(Integer.toString(k)));
            for (NextLitter.Course course : found.courses()) {
                cells.add(course.counts().get(k).toString());
            }
            table.row(cells);
        }
        text.lines(table.lines(style.width()));
        text.blank();
        for (NextLitter.Course course : found.courses()) {
            course.independent()
                    .filter(Chance::isSettled)
                    .ifPresent(none ->
                            text.item(CarrySection.capital(course.origin().toString()) + ": if the "
                                    + young.many() + " were independent, none would show it with a chance of " + none
                                    + "; they are not, while it is not known what the parents carry."));
        }
    }
}
