package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.trait.Catalogue;

/** A model with silver by dose and a linked pair of loci, and patches of it. */
public final class Sketch {

    /** Hue, eye, white hairs, throat, head and tail. */
    public static final Catalogue TRAITS = Documents.reader().readCatalogue(Source.of("traits", """
            {"formatVersion": 0, "kind": "catalogue", "id": "example.traits", "version": "0.1.0", "traits": {
              "hue": {"states": ["black", "chocolate", "none"]},
              "eye": {"states": ["black", "pink"]},
              "white hairs": {"states": ["none", "few", "half", "all"], "ordered": true},
              "throat": {"states": ["bib", "none"]},
              "head": {"states": ["stripe", "none"]},
              "tail": {"states": ["long", "short"]}}}
            """));

    /** The document of {@link #BASE}. */
    public static final String MODEL = """
            {"formatVersion": 0, "kind": "model", "id": "example.sketch", "version": "0.1.0",
              "catalogue": {"id": "example.traits", "version": "0.1.0"},
              "evidence": {"guess": {"grade": "conjecture", "claim": "An invented model.", "sources": []}},
              "loci": {
                "C": {"alleles": ["C","c"], "wildType": "C", "expressions": ["pigment","albino"], "dominance": {"order": ["C > c"], "shows": {"C":"pigment","c":"albino"}}},
                "B": {"alleles": ["B","b"], "wildType": "B", "expressions": ["dark","brown"], "dominance": {"order": ["B > b"], "shows": {"B":"dark","b":"brown"}}},
                "M": {"alleles": ["M","m"], "wildType": "M", "expressions": ["plain","one dose","two doses"], "dominance": {"shows": {"M":"plain","M/m":"one dose","m":"two doses"}}},
                "W": {"alleles": ["W","w"], "wildType": "w", "expressions": ["marked","unmarked"], "dominance": {"order": ["W > w"], "shows": {"W":"marked","w":"unmarked"}}} },
              "groups": { "g": {"transmission": "autosomal", "loci": ["B","W"], "recombination": ["1/10"]} },
              "traits": {
                "hue": {"cases": {"dark": {"when": {"B":["dark"]}, "state":"black"}, "brown": {"when": {"B":["brown"]}, "state":"chocolate"}}},
                "eye": {"cases": {"pink": {"when": {"C":["albino"]}, "state":"pink"}}, "otherwise": "black"},
                "white hairs": {"cases": { "plain": {"when": {"M":["plain"]}, "state":"none"}, "two": {"when": {"M":["two doses"]}, "state":"all"},
                    "one": {"when": {"M":["one dose"]}, "progression": {"clock":"moult", "start": {"few":"3/4","half":"1/4"}, "step": {"few": {"few":"1/2","half":"1/2"}, "half": {"half":"2/3","all":"1/3"}}}}}},
                "spread": {"visible": false, "states": ["none", "low", "high"], "cases": {"marked": {"when": {"W":["marked"]}, "chance": {"none":"1/10","low":"6/10","high":"3/10"}}}, "otherwise": "none"},
                "throat": {"cases": {"bib": {"when": {"spread":["low","high"]}, "state":"bib"}}, "otherwise": "none"},
                "head":   {"cases": {"stripe": {"when": {"spread":["high"]}, "state":"stripe"}}, "otherwise": "none"} },
              "masks": {
                "albino":   {"when": {"C":["albino"]}, "covers": {"hue":"none","white hairs":"all","throat":"none","head":"none"}, "over": ["whitened"]},
                "whitened": {"when": {"white hairs":["all"]}, "covers": {"hue":"none","throat":"none","head":"none"}} } }
            """;

    /** Albino, brown, silver by dose that whitens with every moult, and white marks linked to brown. */
    public static final Model BASE = read(MODEL);

    private Sketch() {}

    /**
     * Reads a model of the same catalogue.
     *
     * @param model its document
     * @return the model
     */
    public static Model read(String model) {
        return Documents.reader().readModel(Source.of("model", model), List.of(TRAITS));
    }

    /**
     * Returns the patch by which silver is recessive, and nothing else is otherwise.
     *
     * @return the patch
     */
    public static Patch recessive() {
        return patch(
                "example.silver-recessive",
                Map.of("/loci/M/dominance", dominance("M > m", ImmutableMap.of("M", "plain", "m", "two doses"))),
                List.of(),
                Map.of());
    }

    /**
     * Returns a statement of dominance.
     *
     * @param order one order
     * @param shows what alleles and pairs show
     * @return its document form
     */
    public static Node dominance(String order, Map<String, String> shows) {
        ObjectBuilder shown = new ObjectBuilder();
        shows.forEach(shown::with);
        return new ObjectBuilder()
                .with("order", Node.texts(List.of(order)))
                .with("shows", shown.build())
                .build();
    }

    /**
     * Returns a patch of {@link #BASE}.
     *
     * @param id its id
     * @param set what it sets
     * @param remove what it removes
     * @param baseline baseline alleles of added loci
     * @return the patch
     */
    public static Patch patch(String id, Map<String, Node> set, List<String> remove, Map<String, String> baseline) {
        return new Patch(id, "0.1.0", Optional.empty(), BASE.reference(), Map.of(), set, remove, baseline);
    }

    /**
     * Applies patches to {@link #BASE}.
     *
     * @param patches the patches
     * @return the patched model
     */
    public static Model patched(Patch... patches) {
        return Documents.reader().apply(BASE, List.of(patches));
    }

    /**
     * Asks what patches of {@link #BASE} move.
     *
     * @param patches the patches
     * @return the question
     */
    public static Comparison comparison(Patch... patches) {
        return Comparison.of(BASE, patched(patches), List.of(patches));
    }
}
