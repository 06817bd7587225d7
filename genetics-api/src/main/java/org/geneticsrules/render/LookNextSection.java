package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.answer.recorded.LookNext.OfState;
import org.geneticsrules.answer.recorded.LookNext.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Word;
import org.geneticsrules.answer.recorded.Origin;

/** What should be looked at next. */
final class LookNextSection {

    /** How many looks are shown in full that tell the same. */
    private static final int MOST_SHOWN = 3;

    private final TextStyle style;

    LookNextSection(TextStyle style) {
        this.style = style;
    }

    void write(LookNext found, TextLines text) {
        looks(found, text);
        found.best().stream().limit(MOST_SHOWN).forEach(row -> best(row, found.origins(), text));
        classes(found, text);
        together(found, text);
    }

    private static List<OfTrait> with(LookNext found, Word word) {
        return found.traits().stream().filter(row -> row.word() == word).toList();
    }

    private void looks(LookNext found, TextLines text) {
        if (found.traits().isEmpty()) {
            return;
        }
        text.heading("What a look would tell");
        List<OfTrait> telling = with(found, Word.TELLS);
        if (!telling.isEmpty()) {
            text.paragraph(
                    "Expected information about what it carries, in bits: a look that halves what is left tells 1.");
            List<String> header = new ArrayList<>(List.of("Trait"));
            found.origins().forEach(origin -> header.add(CarrySection.capital(origin.toString())));
            header.add("May show");
            TextTable table = new TextTable(header);
            for (OfTrait row : telling) {
                List<String> cells = new ArrayList<>(List.of(row.trait()));
                row.tells().forEach(one -> cells.add(one.toString()));
                cells.add(row.states().stream().map(OfState::state).collect(Collectors.joining(", ")));
                table.row(cells);
            }
            text.lines(table.lines(style.width()));
            text.blank();
        }
        named("Tells nothing more", with(found, Word.TELLS_NOTHING), text);
        named("Recorded at this stage already", with(found, Word.RECORDED), text);
        named("Cannot be told yet; look again later", with(found, Word.NOT_YET), text);
        named("Depends on when it is looked at, which is not stated", with(found, Word.STAGE_NEEDED), text);
        named(
                "Not weighed, since the model makes no claim about it for some of what it may be",
                with(found, Word.NO_CLAIM),
                text);
        named("Not worked out", with(found, Word.UNDECIDED), text);
    }

    private static void named(String heading, List<OfTrait> rows, TextLines text) {
        if (!rows.isEmpty()) {
            text.item(
                    heading + ": " + rows.stream().map(LookNextSection::named).collect(Collectors.joining(", ")) + ".");
        }
    }

    /** From when on a trait can be told matters only where it cannot be told now. */
    private static String named(OfTrait row) {
        boolean later = row.word() == Word.NOT_YET || row.word() == Word.STAGE_NEEDED;
        return row.trait() + (later ? row.when().map(when -> " (" + when + ")").orElse("") : "");
    }

    private void best(OfTrait best, List<Origin> origins, TextLines text) {
        text.heading("If " + best.trait() + " is looked at");
        best.note().ifPresent(note -> text.item("How: " + note));
        best.when().ifPresent(when -> text.item("It can be told " + when + "."));
        if (best.note().isPresent() || best.when().isPresent()) {
            text.blank();
        }
        List<String> header = new ArrayList<>(List.of("Seen", "Would leave"));
        origins.forEach(origin -> header.add(CarrySection.capital(origin.toString())));
        TextTable table = new TextTable(header).numbersFrom(2);
        for (OfState one : best.states()) {
            List<String> cells = new ArrayList<>(List.of(one.state(), leaves(one)));
            cells.addAll(CarrySection.chances(one.chances()));
            table.row(cells);
        }
        text.lines(table.lines(style.width()));
    }

    private String leaves(OfState one) {
        String loci = one.leaves().entrySet().stream()
                .map(left -> style.locus(left.getKey()) + ": " + String.join(" or ", left.getValue()))
                .collect(Collectors.joining("; "));
        String genotypes = one.genotypes() + (one.genotypes() == 1 ? " genotype" : " genotypes");
        return one.genotypes() == 0 ? loci : loci.isEmpty() ? genotypes : loci + " (" + genotypes + ")";
    }

    private void classes(LookNext found, TextLines text) {
        if (found.classes().isEmpty()) {
            return;
        }
        text.heading("What \"" + found.animal() + "\" may be");
        TextTable table = new TextTable(CarrySection.header("Locus", "Shows as", "By all records", found.origins()))
                .numbersFrom(3);
        for (LookNext.AtLocus at : found.classes()) {
            String locus = style.locus(at.locus());
            for (LookNext.OfExpression one : at.expressions()) {
                List<String> cells = new ArrayList<>(
                        List.of(locus, one.expression(), one.whether().word()));
                found.origins().forEach(origin -> cells.add("hangs on its sex"));
                for (int i = 0; i < one.chances().size(); i++) {
                    cells.set(3 + i, one.chances().get(i).toString());
                }
                table.row(cells);
                locus = "";
            }
        }
        text.lines(table.lines(style.width()));
    }

    private void together(LookNext found, TextLines text) {
        if (found.together().isEmpty()) {
            return;
        }
        text.blank();
        text.paragraph("What it shows as at these loci together, the most likely first:");
        List<String> loci = List.copyOf(found.together().get(0).expressions().keySet());
        List<String> header = new ArrayList<>(loci.stream().map(style::locus).toList());
        found.origins().forEach(origin -> header.add(CarrySection.capital(origin.toString())));
        TextTable table = new TextTable(header).numbersFrom(loci.size());
        for (LookNext.Combined one : found.together()) {
            List<String> cells = new ArrayList<>(one.expressions().values());
            one.chances().stream().map(Chance::toString).forEach(cells::add);
            table.row(cells);
        }
        text.lines(table.lines(style.width()));
        if (found.others() > 0) {
            text.blank();
            text.paragraph("There are " + found.others() + " more combinations, none of them more likely.");
        }
    }
}
