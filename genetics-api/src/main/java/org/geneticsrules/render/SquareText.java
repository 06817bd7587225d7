package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.cross.Gamete;
import org.geneticsrules.cross.PunnettSquare;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * A Punnett square as a plain text table: the dam's gametes head the columns, the sire's the rows.
 *
 * <p>Each gamete stands with its chance, and a box has the product of the two. Stateless and thread-safe.
 */
public final class SquareText {

    private SquareText() {}

    /**
     * Returns the table of a square.
     *
     * @param square the square
     * @return lines that end in a newline; as wide as the square needs
     */
    public static String of(PunnettSquare square) {
        List<String> header = new ArrayList<>();
        header.add("sire \\ dam");
        square.damGametes().asMap().forEach((gamete, chance) -> header.add(head(gamete, chance)));
        TextTable table = new TextTable(header);
        square.sireGametes().asMap().forEach((fromSire, chance) -> {
            List<String> cells = new ArrayList<>();
            cells.add(head(fromSire, chance));
            for (Gamete fromDam : square.damGametes().outcomes()) {
                cells.add(square.genotype(fromSire, fromDam).toString());
            }
            table.row(cells);
        });
        TextLines text = new TextLines(TextStyle.standard().width());
        return text.lines(table.lines(Integer.MAX_VALUE / 2))
                .paragraph(
                        "Each box is a union of gametes with its chance, the row's times the column's; it is not a kit.")
                .toString();
    }

    private static String head(Gamete gamete, Probability chance) {
        return gamete + " (" + chance + kits(gamete) + ")";
    }

    /** What is said of a gamete that decides about the sex. */
    static String kits(Gamete gamete) {
        return gamete.kit()
                .map(sex -> sex == Sex.FEMALE ? ", daughters" : ", sons")
                .orElse("");
    }
}
