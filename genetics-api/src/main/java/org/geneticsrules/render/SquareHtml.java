package org.geneticsrules.render;

import java.util.Map;
import org.geneticsrules.cross.Gamete;
import org.geneticsrules.cross.PunnettSquare;
import org.geneticsrules.probability.Probability;

/**
 * A Punnett square as an accessible HTML table: a caption, and header cells with a scope for every row and column, so that a screen
 * reader can announce the gametes of each box.
 *
 * <p>Stateless and thread-safe.
 */
public final class SquareHtml {

    private SquareHtml() {}

    /**
     * Returns the table of a square.
     *
     * @param square the square
     * @return a {@code table} element to be put into a page
     */
    public static String of(PunnettSquare square) {
        StringBuilder html = new StringBuilder("<table>\n  <caption>Punnett square: gametes of the sire in rows, ")
                .append("gametes of the dam in columns. Each box is a union of gametes with its chance, not a kit.")
                .append("</caption>\n  <thead>\n    <tr>\n      <th scope=\"col\">sire \\ dam</th>\n");
        square.damGametes().asMap().forEach((gamete, chance) -> header("col", gamete, chance, html));
        html.append("    </tr>\n  </thead>\n  <tbody>\n");
        for (Map.Entry<Gamete, Probability> sire : square.sireGametes().asMap().entrySet()) {
            html.append("    <tr>\n");
            header("row", sire.getKey(), sire.getValue(), html);
            for (Gamete dam : square.damGametes().outcomes()) {
                html.append("      <td>")
                        .append(escaped(square.genotype(sire.getKey(), dam).toString()))
                        .append("<br>")
                        .append(square.probability(sire.getKey(), dam))
                        .append("</td>\n");
            }
            html.append("    </tr>\n");
        }
        return html.append("  </tbody>\n</table>\n").toString();
    }

    private static void header(String scope, Gamete gamete, Probability chance, StringBuilder html) {
        html.append("      <th scope=\"")
                .append(scope)
                .append("\">")
                .append(escaped(gamete.toString()))
                .append("<br>")
                .append(chance)
                .append(SquareText.kits(gamete))
                .append("</th>\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
