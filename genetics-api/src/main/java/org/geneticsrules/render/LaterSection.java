package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LookNext.Whether;

/** What an animal may show at a stage of its life. */
final class LaterSection {

    private final TextStyle style;

    LaterSection(TextStyle style) {
        this.style = style;
    }

    void write(Later found, TextLines text) {
        if (found.traits().isEmpty()) {
            return; // nothing fits, so there is nothing to list but the records that do not
        }
        text.heading("What \"" + found.animal() + "\" may show at " + found.stage());
        states(found, text);
        excluded(found, text);
        named("Cannot be told by then; look again later", with(found, Word.NOT_YET), text);
        named("Depends on what is not stated of that time", with(found, Word.STAGE_NEEDED), text);
        named(
                "Not told, since the model makes no claim about it for some of what it may be",
                with(found, Word.NO_CLAIM),
                text);
        List<OfTrait> noted = found.traits().stream()
                .filter(row -> !row.states().isEmpty() && row.note().isPresent())
                .toList();
        if (!noted.isEmpty()) {
            text.heading("How to look");
            noted.forEach(row -> text.item(row.trait() + ": " + row.note().orElse("")));
        }
    }

    private static List<OfTrait> with(Later found, Word word) {
        return found.traits().stream().filter(row -> row.word() == word).toList();
    }

    private void states(Later found, TextLines text) {
        if (found.traits().stream().allMatch(row -> row.states().isEmpty())) {
            return;
        }
        boolean covered = found.traits().stream()
                .flatMap(row -> row.left().stream())
                .anyMatch(one -> !one.hiddenBy().isEmpty());
        List<String> header = new ArrayList<>(List.of("Trait", "State", "By all records"));
        if (covered) {
            header.add("May be hidden by");
        }
        int numbers = header.size();
        found.origins().forEach(origin -> header.add(CarrySection.capital(origin.toString())));
        TextTable table = new TextTable(header).numbersFrom(numbers);
        for (OfTrait row : found.traits()) {
            String trait = row.trait();
            for (OfState one : row.left()) {
                List<String> cells = new ArrayList<>(List.of(
                        trait,
                        one.state(),
                        row.word() == Word.SHOWS ? "certain" : one.whether().word()));
                if (covered) {
                    cells.add(one.hiddenBy().isEmpty() ? "" : "mask " + String.join(", ", one.hiddenBy()));
                }
                cells.addAll(CarrySection.chances(one.chances()));
                table.row(cells);
                trait = "";
            }
        }
        text.lines(table.lines(style.width()));
        text.blank();
    }

    private static void excluded(Later found, TextLines text) {
        for (OfTrait row : found.traits()) {
            String states = row.states().stream()
                    .filter(one -> one.whether() == Whether.EXCLUDED)
                    .map(OfState::state)
                    .collect(Collectors.joining(", "));
            if (!states.isEmpty() && row.word() != Word.SHOWS) {
                text.item("excluded then: " + row.trait() + " " + states + ".");
            }
        }
    }

    private static void named(String heading, List<OfTrait> rows, TextLines text) {
        if (!rows.isEmpty()) {
            text.item(heading + ": "
                    + rows.stream()
                            .map(row -> row.trait()
                                    + row.when().map(when -> " (" + when + ")").orElse(""))
                            .collect(Collectors.joining(", "))
                    + ".");
        }
    }
}
