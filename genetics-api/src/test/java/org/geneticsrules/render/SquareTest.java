package org.geneticsrules.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.PunnettSquare;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Test;

/** Punnett squares as text and as HTML. */
class SquareTest {

    /** Loci K0, K1, .. of an invented model, each with two alleles. */
    private static Model model(int loci) {
        Catalogue catalogue = Catalogue.builder("invented.traits", "1")
                .trait("glow", "on", "off")
                .build();
        ModelBuilder model = Model.builder("invented", "1", catalogue);
        for (int i = 0; i < loci; i++) {
            String name = "K" + i;
            String recessive = "k" + i;
            model.locus(
                    name,
                    locus -> locus.alleles(name, recessive)
                            .dominant(name, recessive)
                            .shows(name, "on")
                            .shows(recessive, "off"));
        }
        return model.build();
    }

    private static PunnettSquare square(int loci) {
        Model model = model(loci);
        String carrier =
                IntStream.range(0, loci).mapToObj(i -> "K" + i + "/k" + i).collect(Collectors.joining(" "));
        Genotype parent = Genotype.parse(model, carrier);
        return Cross.of(model, parent, parent).square(List.copyOf(model.loci().keySet()));
    }

    @Test
    void text_heads_rows_with_the_sires_gametes_and_columns_with_the_dams() {
        assertEquals("""
                sire \\ dam  K0 (1/2)  k0 (1/2)
                ----------  --------  --------
                K0 (1/2)    K0/K0     K0/k0
                k0 (1/2)    K0/k0     k0/k0
                Each box is a union of gametes with its chance, the row's times the column's; it is not a kit.
                """, SquareText.of(square(1)));
    }

    @Test
    void html_gives_every_header_cell_its_scope() {
        String html = SquareHtml.of(square(2));
        assertTrue(html.startsWith("<table>\n  <caption>"), html);
        assertEquals(5, count(html, "<th scope=\"col\">"));
        assertEquals(4, count(html, "<th scope=\"row\">"));
        assertEquals(16, count(html, "<br>1/16</td>"));
    }

    @Test
    void a_square_of_sixty_four_gametes_a_side_is_shown_whole() {
        String text = SquareText.of(square(6));
        assertEquals(64 + 3, text.lines().count());
        assertEquals(64 * 64, count(SquareHtml.of(square(6)), "<td>"));
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }
}
