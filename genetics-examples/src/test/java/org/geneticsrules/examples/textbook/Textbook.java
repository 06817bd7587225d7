package org.geneticsrules.examples.textbook;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.Phenotype;

/** What the plug-in ships, and the tables it is checked against. */
final class Textbook {

    /** The test runner says where the module is; without it, the working folder is the module. */
    static final Path MODULE = Path.of(System.getProperty("basedir", ""));

    static final Path SHIPPED = MODULE.resolve("src/main/resources/org/geneticsrules/examples/textbook");
    static final Path CHECKS = MODULE.resolve("src/test/resources/org/geneticsrules/examples/textbook");

    static final Registry REGISTRY = Registry.of(List.of(new TextbookProvider()));

    private Textbook() {}

    /** The models, and those that a patch makes of one of them. */
    static List<Model> models() {
        return Stream.concat(
                        REGISTRY.models().stream(),
                        REGISTRY.patches().stream()
                                .map(patch -> Documents.reader().apply(REGISTRY.model(patch.base()), List.of(patch))))
                .toList();
    }

    static Model model(String id) {
        return models().stream()
                .filter(model -> model.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no model " + id + " among " + models()));
    }

    static List<Map<String, String>> rows(String table) {
        return Csv.rows(CHECKS.resolve(table + ".csv"));
    }

    /** As in {@code hue=black, eye colour=dark}. */
    static Phenotype look(String text) {
        return Phenotype.parse(text.replace('=', ':'));
    }

    /** As in {@code hue=black, eye colour=dark: 3/4; hue=none seen, eye colour=pink: 1/4}. */
    static Map<Phenotype, Probability> shares(String text) {
        Map<Phenotype, Probability> shares = new LinkedHashMap<>();
        for (String entry : text.split("; ", -1)) {
            int colon = entry.lastIndexOf(": ");
            shares.put(look(entry.substring(0, colon)), Probability.parse(entry.substring(colon + 2)));
        }
        return shares;
    }

    /** A genotype, or a set as in {@code C/-}; loci that are not named are unknown. */
    static Parent parent(Model model, String genotype, String population) {
        Parent parent = Parent.among(GenotypeSet.parse(model, genotype, OmittedLoci.UNKNOWN));
        return population.isEmpty() ? parent : parent.from(population(population));
    }

    /** As in {@code C: C 49/50, c 1/50}. */
    private static Population population(String text) {
        String[] locus = text.split(": ", 2);
        Map<String, Probability> frequencies = new LinkedHashMap<>();
        for (String allele : locus[1].split(", ", -1)) {
            String[] parts = allele.split(" ", 2);
            frequencies.put(parts[0], Probability.parse(parts[1]));
        }
        return new Population(text, Optional.empty(), Map.of(locus[0], Distribution.of(frequencies)), Optional.empty());
    }

    static String rounded(double value, String like) {
        return new BigDecimal(value)
                .setScale(new BigDecimal(like).scale(), RoundingMode.HALF_EVEN)
                .toPlainString();
    }
}
