package org.geneticsrules.examples.guide;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** Draws the pictures of the guide that show numbers, from the models of its samples. */
final class Pictures {

    private static final int LEFT = 110;
    private static final int WIDTH = 480;
    private static final int BAR = 34;
    private static final int STEP = 52;

    /** How a class of kits is filled; shades and strokes differ enough to be told in print and without colour. */
    private record Fill(String look, String words, String colour, String ink) {}

    private static final List<Fill> FILLS = List.of(
            new Fill("eye: dark, hue: black", "black", "#333333", "#ffffff"),
            new Fill("eye: dark, hue: none", "hue covered, eyes dark", "#d9e6f2", "#1a1a1a"),
            new Fill("eye: pink, hue: none", "pink-eyed white", "#ffffff", "#1a1a1a"));

    private Pictures() {}

    /** The pictures by file name. */
    static Map<String, String> all() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("whitening.svg", whitening());
        return all;
    }

    /** A bar for each of four moults, divided by the looks of the kits of the mating on the page about stages. */
    private static String whitening() {
        Blocks.Run run = Blocks.run("Whitening");
        Model model = Documents.reader()
                .readModel(
                        Source.of("Whitening", Documents.write(run.document())),
                        List.of(run.shown().catalogue()));
        Genotype parent = Genotype.parse(model, "C/c M/m");
        Cross cross = Cross.of(model, parent, parent);
        StringBuilder bars = new StringBuilder();
        StringBuilder words = new StringBuilder();
        for (int moult = 0; moult <= 3; moult++) {
            Map<Phenotype, Probability> looks = cross.phenotypes(
                            View.of(List.of("eye", "hue")).at(LifeStage.atMoult(moult)))
                    .asMap();
            int y = 60 + moult * STEP;
            bars.append(
                    String.format(Locale.ROOT, "  <text x=\"20\" y=\"%d\">moult %d</text>%n", y + BAR / 2 + 5, moult));
            words.append(String.format(Locale.ROOT, " Moult %d:", moult));
            double x = LEFT;
            for (Fill fill : FILLS) {
                Probability chance = looks.getOrDefault(Phenotype.parse(fill.look()), Probability.ZERO);
                double width = chance.toDouble() * WIDTH;
                bars.append(String.format(
                        Locale.ROOT,
                        "  <rect x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\" stroke=\"#1a1a1a\"/>%n",
                        x,
                        y,
                        width,
                        BAR,
                        fill.colour()));
                bars.append(String.format(
                        Locale.ROOT,
                        "  <text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" fill=\"%s\">%s</text>%n",
                        x + width / 2,
                        y + BAR / 2 + 5,
                        fill.ink(),
                        chance));
                words.append(String.format(Locale.ROOT, " %s %s,", fill.words(), chance));
                x += width;
            }
            words.setCharAt(words.length() - 1, '.');
        }
        StringBuilder legend = new StringBuilder();
        int x = LEFT;
        for (Fill fill : FILLS) {
            legend.append(String.format(
                    Locale.ROOT,
                    "  <rect x=\"%d\" y=\"20\" width=\"16\" height=\"16\" fill=\"%s\" stroke=\"#1a1a1a\"/>"
                            + "<text x=\"%d\" y=\"33\">%s</text>%n",
                    x,
                    fill.colour(),
                    x + 24,
                    fill.words()));
            x += 60 + fill.words().length() * 8;
        }
        return ("""
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 620 270" role="img" aria-labelledby="t d" \
                font-family="sans-serif" font-size="15" fill="#1a1a1a">
                  <title id="t">Shares of looks at four moults</title>
                  <desc id="d">Kits of C/c M/m with the same.%s</desc>
                  <rect width="620" height="270" fill="#ffffff"/>
                """.formatted(words) + legend + bars + "</svg>\n").replace(System.lineSeparator(), "\n");
    }
}
