package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Cited;
import org.geneticsrules.answer.recorded.Parentage;

/** Which males may be sires, and why not. */
final class ParentageSection {

    private final TextStyle style;

    ParentageSection(TextStyle style) {
        this.style = style;
    }

    void write(Parentage found, TextLines text) {
        text.heading("Possible sires of litter \"" + found.litter() + "\"");
        boolean several = found.kits().stream().anyMatch(kit -> kit.males().size() > 1);
        TextTable table = new TextTable(
                        CarrySection.header("Of", "Male", "By all records", several ? found.origins() : List.of()))
                .numbersFrom(3);
        for (Parentage.OfKit kit : found.kits()) {
            for (Parentage.OfMale male : kit.males()) {
                List<String> cells = new ArrayList<>(List.of(
                        kit.kit().map(id -> "\"" + id + "\"").orElse("the litter"),
                        male.name(),
                        male.word().word()));
                if (several) {
                    cells.addAll(
                            male.chances().isEmpty()
                                    ? found.origins().stream().map(origin -> "").toList()
                                    : CarrySection.chances(male.chances()));
                }
                table.row(cells);
            }
        }
        text.lines(table.lines(style.width()));
        for (Parentage.OfKit kit : found.kits()) {
            kit.males().forEach(male -> against(kit, male, text));
        }
    }

    private static void against(Parentage.OfKit kit, Parentage.OfMale male, TextLines text) {
        for (List<Cited> records : male.against()) {
            text.item("If " + male.name() + " were the sire of "
                    + kit.kit().map(id -> "\"" + id + "\"").orElse("the litter") + ", not all of these could be true: "
                    + records.stream().map(Cited::words).collect(Collectors.joining("; ")) + "; the model.");
        }
    }
}
