package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.document.Node;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Sex;

/** Every statement has an address in the model's document, and everything an evaluation can cite is a statement. */
class DocumentLaws {

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models();
    }

    static void everyStatementResolves(Model model) {
        Map<String, Object> document = DocumentMaps.of(model);
        model.statements().keySet().forEach(pointer -> assertTrue(resolve(document, pointer) != null, pointer));
    }

    static void whatDecidesAPairIsAStatement(Model model) {
        model.loci()
                .values()
                .forEach(locus -> locus.pairs().forEach(pair -> {
                    List<String> cited = locus.decidedBy(pair, Sex.FEMALE);
                    assertTrue(model.statements().keySet().containsAll(cited), cited.toString());
                    assertEquals(cited.size(), new LinkedHashSet<>(cited).size());
                }));
        model.rules().values().forEach(rule -> {
            rule.cases().forEach(one -> assertTrue(model.statements().containsKey(rule.pointer(one))));
            rule.otherwise().ifPresent(rest -> assertTrue(model.statements().containsKey(rule.pointer(rest))));
        });
    }

    static void everyStatementIsListed(Model model) {
        int expected = model.masks().size() + model.populations().size();
        for (Locus locus : model.loci().values()) {
            expected += locus.dominance(Sex.FEMALE).order().size()
                    + locus.dominance(Sex.FEMALE).shows().size();
        }
        for (TraitRule rule : model.rules().values()) {
            expected += rule.cases().size() + (rule.otherwise().isPresent() ? 1 : 0);
        }
        assertEquals(expected, model.statements().size());
    }

    static void membersKeepTheirDeclaredOrder(Model model) {
        Node.ObjectNode document = (Node.ObjectNode) ModelDocument.of(model);
        Set<String> loci =
                ((Node.ObjectNode) document.members().get("loci")).members().keySet();
        assertEquals(List.copyOf(model.loci().keySet()), List.copyOf(loci));
        Set<String> traits =
                ((Node.ObjectNode) document.members().get("traits")).members().keySet();
        assertEquals(List.copyOf(model.rules().keySet()), List.copyOf(traits));
    }

    /** RFC 6901, section 4: names are unescaped with ~1 before ~0; in a list they are positions from 0. */
    private static Object resolve(Object at, String pointer) {
        for (String escaped : List.of(pointer.substring(1).split("/", -1))) {
            String name = escaped.replace("~1", "/").replace("~0", "~");
            at = at instanceof List<?> list ? list.get(Integer.parseInt(name)) : ((Map<?, ?>) at).get(name);
        }
        return at;
    }

    @Property(tries = 300)
    void statements(@ForAll("models") Model model) {
        everyStatementResolves(model);
        whatDecidesAPairIsAStatement(model);
        everyStatementIsListed(model);
        membersKeepTheirDeclaredOrder(model);
    }
}
