package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.MayCarry;
import org.geneticsrules.answer.recorded.Origin;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.inference.Possibility;

/** What an animal may be, locus by locus. */
final class CarrySection {

    private static final int MOST_PAIRS = 6;

    private final TextStyle style;

    CarrySection(TextStyle style) {
        this.style = style;
    }

    void write(MayCarry found, TextLines text) {
        if (found.loci().stream()
                .flatMap(at -> at.alleles().stream())
                .anyMatch(one -> one.word() == MayCarry.Word.CONTRADICTED)) {
            return; // nothing fits, so there is nothing to list but the records that do not
        }
        text.heading("What \"" + found.animal() + "\" may carry");
        TextTable alleles = new TextTable(header("Locus", "Allele", "By all records", found.origins())).numbersFrom(3);
        for (MayCarry.AtLocus at : found.loci()) {
            String locus = style.locus(at.locus());
            for (MayCarry.OfAllele one : at.alleles()) {
                row(alleles, locus, style.allele(one.allele()), one.word().word(), one.chances());
                locus = "";
            }
        }
        text.lines(alleles.lines(style.width()));
        text.blank();
        text.paragraph("Genotypes that all records leave open; every other is excluded:");
        TextTable pairs = new TextTable(header("Locus", "Genotype", "Whether", found.origins())).numbersFrom(3);
        for (MayCarry.AtLocus at : found.loci()) {
            String locus = style.locus(at.locus());
            for (MayCarry.OfPair one : at.genotypes()) {
                if (!(one.possibility() instanceof Possibility.Excluded)) {
                    row(pairs, locus, style.pair(one.pair()), word(one.possibility()), one.chances());
                    locus = "";
                }
            }
        }
        text.lines(pairs.lines(style.width()));
        List<MayCarry.AtLocus> hidden =
                found.loci().stream().filter(at -> at.hidden().isPresent()).toList();
        if (!hidden.isEmpty()) {
            text.blank();
            text.paragraph("What its look does not tell, and the records of its relatives do not either:");
            hidden.forEach(at -> text.item(hidden(at.hidden().orElseThrow())));
        }
    }

    private static void row(TextTable table, String one, String two, String three, List<Chance> chances) {
        List<String> cells = new ArrayList<>(List.of(one, two, three));
        cells.addAll(chances(chances));
        table.row(cells);
    }

    static List<String> header(String one, String two, String three, List<Origin> origins) {
        List<String> header = new ArrayList<>(List.of(one, two, three));
        origins.forEach(origin -> header.add(capital(origin.toString())));
        return header;
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    static List<String> chances(List<Chance> chances) {
        return chances.stream().map(Chance::toString).toList();
    }

    private static String word(Possibility possibility) {
        if (possibility instanceof Possibility.Possible) {
            return "possible";
        }
        return possibility instanceof Possibility.Undecided ? "not found out" : "records contradict";
    }

    private String hidden(Hidden one) {
        String causes = one.causes().stream()
                .sorted(Comparator.comparing(cause -> cause.kind() == Cause.Kind.MASK ? 0 : 1))
                .map(cause ->
                        (cause.kind() == Cause.Kind.SAME_LOOK || cause.kind() == Cause.Kind.CHANCE ? "" : "hidden by ")
                                + cause)
                .collect(Collectors.joining("; "));
        int open = one.alternatives().size();
        return style.locus(one.locus()) + " may be "
                + (open > MOST_PAIRS ? "any of " + open + " genotypes" : style.pairs(one.alternatives()))
                + (causes.isEmpty() ? "" : " - " + causes);
    }
}
