package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Kits of the invented model of fur: linkage, chance, progression, masks and a patch in one document, every row calculated by hand. */
class FurKitsTest {

    private static final Catalogue TRAITS =
            Documents.reader().readCatalogue(Source.of("traits", Samples.resource("fur-traits.json")));
    private static final Model BY_DOSE =
            Documents.reader().readModel(Source.of("fur", Samples.resource("fur-model.json")), List.of(TRAITS));
    private static final Model RECESSIVE = Documents.reader().apply(BY_DOSE, List.of(recessive()));

    /** Sets the dominance of one locus and nothing else. */
    private static Patch recessive() {
        return Documents.reader()
                .readPatch(
                        Source.of("recessive silver", """
                                {"formatVersion": 0, "kind": "patch", "id": "example.fur.recessive", "version": "1.0.0",
                                 "base": {"id": "example.fur", "version": "1.0.0", "sha256": "%s"},
                                 "set": {"/loci/M/dominance": {"order": ["M > m"], "shows": {"M": "plain", "m": "two doses"}}}}
                                """.formatted(
                                        BY_DOSE.reference().sha256().orElseThrow())),
                        BY_DOSE);
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "fur-kits.csv", numLinesToSkip = 1, maxCharsPerColumn = 1000)
    void kits_are_as_calculated(
            String id,
            String source,
            String tag,
            String silver,
            String sire,
            String dam,
            int moult,
            String traits,
            String expected) {
        Model model = silver.equals("recessive") ? RECESSIVE : BY_DOSE;
        Map<Phenotype, Probability> shares = new LinkedHashMap<>();
        for (String entry : expected.split(" \\| ", -1)) {
            String[] lookAndShare = entry.split(" = ", -1);
            shares.put(Phenotype.parse(lookAndShare[0].replace(';', ',')), Probability.parse(lookAndShare[1]));
        }
        View view = View.of(Arrays.asList(traits.split("; ", -1))).at(LifeStage.atMoult(moult));
        assertEquals(
                shares,
                Cross.of(model, Genotype.parse(model, sire), Genotype.parse(model, dam))
                        .phenotypes(view)
                        .asMap(),
                () -> id + " (" + tag + ": " + source + ")");
    }
}
