package org.geneticsrules.spi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.spi.Fakes.Nameless;
import org.geneticsrules.spi.Fakes.Otters;
import org.geneticsrules.spi.Fakes.Seals;
import org.geneticsrules.spi.Fakes.Unannotated;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

class RegistryTest {

    private static final String TRAITS = Fakes.traits("example.otters");
    private static final String MODEL = Fakes.model("example.otters");
    private static final Otters OTTERS = new Otters(Map.of("traits", TRAITS, "model", MODEL));

    @Test
    void a_plug_in_is_served_with_its_model_its_source_and_its_checksum() {
        Registry registry = Registry.of(List.of(OTTERS));
        assertEquals(List.of(), registry.problems());
        ProviderDescriptor plugin = registry.providers().get(0);
        Model model = registry.model("example.otters.coat");
        assertEquals(Optional.of(model), registry.defaultModel(plugin));
        assertEquals(Optional.of(new ModelSource(plugin, model.reference())), registry.source(model));
        assertEquals(64, plugin.sha256().orElseThrow().length());
        assertEquals(model, registry.model(model.reference()));
        assertEquals(model, registry.model("example.otters.coat 1.0.0"));
        assertTrue(plugin.location().startsWith("module org.geneticsrules.api"), plugin.location());
    }

    @Test
    void the_checksum_tells_of_content_and_not_of_spelling() {
        String spaced = MODEL.replace(" ", "  ");
        String changed = MODEL.replace("\"otherwise\": \"dark\"", "\"otherwise\": \"pale\"");
        assertEquals(checksum(MODEL), checksum(spaced));
        assertNotEquals(checksum(MODEL), checksum(changed));
    }

    private static String checksum(String model) {
        Registry registry = Registry.of(List.of(new Otters(Map.of("traits", TRAITS, "model", model))));
        return registry.providers().get(0).sha256().orElseThrow();
    }

    @Test
    void a_model_may_be_about_a_catalogue_of_another_plug_in_whatever_their_order() {
        Otters model = new Otters(Map.of("model", MODEL));
        Seals traits = new Seals(Map.of("traits", TRAITS));
        for (List<? extends GeneticsProvider> order : List.of(List.of(model, traits), List.of(traits, model))) {
            Registry registry = Registry.of(order);
            assertEquals(List.of(), registry.problems());
            assertEquals(
                    List.of("example.otters", "example.seals"),
                    registry.providers().stream().map(ProviderDescriptor::id).toList());
            assertEquals(1, registry.models().size());
        }
    }

    @Test
    void what_rests_on_a_plug_in_that_fails_fails_too() {
        Registry registry = Registry.of(List.of(
                new Otters(Map.of("model", MODEL)), new Seals(Map.of("traits", TRAITS, "wrong", "{\"kind\": 1}"))));
        assertEquals(List.of(), registry.providers());
        assertEquals(
                List.of("example.otters 1.0.0", "example.seals 2.0.0"),
                registry.problems().stream().map(PluginProblem::subject).toList());
        assertEquals(
                List.of("unknown-catalogue"),
                registry.problems().get(0).details().stream().map(Problem::code).toList());
    }

    @Test
    void a_document_that_is_not_there_is_named() {
        PluginProblem problem = onlyProblem(new Otters(Map.of("traits", TRAITS, "model", MODEL, "lost", "")));
        assertEquals("unreadable-document", problem.code());
        assertEquals(Optional.of("lost"), problem.document());
    }

    @Test
    void what_is_wrong_in_a_document_is_told_with_its_place() {
        PluginProblem problem =
                onlyProblem(new Otters(Map.of("traits", TRAITS, "model", MODEL.replace("D > d", "D > e"))));
        assertEquals("invalid-document", problem.code());
        assertEquals(Optional.of("model"), problem.document());
        assertTrue(problem.details().get(0).position().isPresent(), problem::toString);
        assertTrue(problem.toString().contains("/loci/D/dominance/order/0"), problem::toString);
    }

    @Test
    void a_descriptor_that_names_no_model_of_its_own_as_default_is_refused() {
        assertEquals(
                "unclear-default-model",
                onlyProblem(new Otters(Map.of("traits", TRAITS))).code());
    }

    @Test
    void a_provider_without_a_descriptor_or_with_a_bad_one_hides_no_other() {
        Registry registry = Registry.of(List.of(new Unannotated(), OTTERS, new Nameless()));
        assertEquals(1, registry.providers().size());
        assertEquals(
                List.of("bad-descriptor", "bad-descriptor", "bad-descriptor", "no-descriptor"),
                registry.problems().stream().map(PluginProblem::code).toList());
    }

    @Test
    void two_plug_ins_with_different_documents_of_one_name_are_both_refused() {
        String other = TRAITS.replace("\"pale\"", "\"pale\", \"white\"");
        Registry registry = Registry.of(List.of(OTTERS, new Seals(Map.of("traits", other))));
        assertEquals(List.of(), registry.providers());
        PluginProblem problem = registry.problems().get(0);
        assertEquals("document-clash", problem.code());
        assertEquals("example.otters 1.0.0, example.seals 2.0.0", problem.subject());
    }

    @Test
    void a_model_that_is_not_there_is_refused_with_the_nearest() {
        Registry registry = Registry.of(List.of(OTTERS));
        ProblemsException unknown = assertThrows(ProblemsException.class, () -> registry.model("example.otters.coats"));
        assertEquals(
                Optional.of("example.otters.coat"), unknown.problems().get(0).nearest());
        Reference pinned = new Reference("example.otters.coat", "1.0.0", Optional.of("0".repeat(64)));
        ProblemsException other = assertThrows(ProblemsException.class, () -> registry.model(pinned));
        assertEquals("other-content", other.problems().get(0).code());
    }

    private static String patch(String id) {
        Model model = Registry.of(List.of(OTTERS)).model("example.otters.coat");
        return """
                {"formatVersion": 0, "kind": "patch", "id": "%s", "version": "0.1.0",
                  "base": {"id": "example.otters.coat", "version": "1.0.0", "sha256": "%s"},
                  "set": {"/loci/D/dominance": {"order": ["d > D"], "shows": {"D": "%s", "d": "%s"}}}}
                """.formatted(
                        id,
                        model.reference().sha256().orElseThrow(),
                        model.locus("D").expressions().get(0),
                        model.locus("D").expressions().get(1));
    }

    @Test
    void a_patch_may_be_for_a_model_of_another_plug_in_whatever_their_order() {
        Seals patches = new Seals(Map.of("one", patch("example.seals.one"), "two", patch("example.seals.two")));
        for (List<? extends GeneticsProvider> order : List.of(List.of(OTTERS, patches), List.of(patches, OTTERS))) {
            Registry registry = Registry.of(order);
            assertEquals(List.of(), registry.problems());
            Model base = registry.model("example.otters.coat");
            assertEquals(registry.patches(), registry.patches(base));
            assertEquals(2, registry.patches().size());
            Patch one = registry.patch("example.seals.one");
            assertEquals(one, registry.patch("example.seals.one 0.1.0"));
            Model patched = Documents.reader().apply(base, List.of(one));
            assertEquals(List.of(), registry.patches(patched));
            // What holds of the catalogue of the base holds of the patched model.
            assertEquals(registry.cautions(base), registry.cautions(patched));
        }
    }

    @Test
    void a_patch_whose_base_is_not_served_takes_its_plug_in_out() {
        Seals patches = new Seals(Map.of("one", patch("example.seals.one")));
        Registry alone = Registry.of(List.of(patches));
        assertEquals(List.of(), alone.providers());
        assertEquals("unknown-base", alone.problems().get(0).details().get(0).code());
        Otters broken = new Otters(Map.of("traits", TRAITS, "model", MODEL, "wrong", "{}"));
        Registry both = Registry.of(List.of(broken, patches));
        assertEquals(List.of(), both.providers());
        assertEquals(2, both.problems().size());
    }

    @Test
    void a_patch_that_is_not_there_is_refused_with_the_nearest() {
        Registry registry = Registry.of(List.of(OTTERS, new Seals(Map.of("one", patch("example.seals.one")))));
        ProblemsException unknown = assertThrows(ProblemsException.class, () -> registry.patch("example.seals.on"));
        assertEquals("unknown-patch", unknown.problems().get(0).code());
        assertEquals(Optional.of("example.seals.one"), unknown.problems().get(0).nearest());
    }

    private static String vocabulary(String id, String word) {
        return """
                {"formatVersion": 0, "kind": "vocabulary", "id": "%s", "version": "1.0.0",
                  "catalogue": {"id": "example.otters.traits", "version": "1.0.0"},
                  "facets": {"colour": {}},
                  "names": {"%s": {"facet": "colour", "senses": {"only": {"looks": {"pale": {"coat": ["pale"]}}}}}}}
                """.formatted(id, word);
    }

    @Test
    void a_vocabulary_may_be_about_a_catalogue_of_another_plug_in_and_is_found_by_id_and_version() {
        Seals names = new Seals(Map.of(
                "one", vocabulary("example.seals.one", "ivory"), "two", vocabulary("example.seals.two", "chalk")));
        for (List<? extends GeneticsProvider> order : List.of(List.of(OTTERS, names), List.of(names, OTTERS))) {
            Registry registry = Registry.of(order);
            assertEquals(List.of(), registry.problems());
            Vocabulary one = registry.vocabulary("example.seals.one");
            assertEquals(one, registry.vocabulary("example.seals.one 1.0.0"));
            assertTrue(one.names().containsKey("ivory"));
            assertEquals(
                    registry.vocabularies(),
                    registry.vocabularies(registry.model("example.otters.coat").catalogue()));
            assertEquals(2, registry.vocabularies().size());
            assertEquals(
                    "unknown-vocabulary",
                    assertThrows(ProblemsException.class, () -> registry.vocabulary("example.seals.three"))
                            .problems()
                            .get(0)
                            .code());
        }
    }

    @Test
    void a_vocabulary_whose_catalogue_is_not_served_takes_its_plug_in_out() {
        PluginProblem problem = onlyProblem(new Seals(Map.of("names", vocabulary("example.seals.names", "ivory"))));
        assertEquals("invalid-document", problem.code());
        assertEquals("unknown-catalogue", problem.details().get(0).code());
    }

    @Test
    void two_plug_ins_with_different_vocabularies_of_one_name_are_both_refused_and_with_equal_ones_served() {
        Otters otters =
                new Otters(Map.of("traits", TRAITS, "model", MODEL, "names", vocabulary("example.names", "ivory")));
        Registry equal = Registry.of(List.of(otters, new Seals(Map.of("n", vocabulary("example.names", "ivory")))));
        assertEquals(List.of(), equal.problems());
        assertEquals(1, equal.vocabularies().size());
        Registry clash = Registry.of(List.of(otters, new Seals(Map.of("n", vocabulary("example.names", "chalk")))));
        assertEquals(List.of(), clash.providers());
        assertEquals("document-clash", clash.problems().get(0).code());
    }

    private static PluginProblem onlyProblem(GeneticsProvider provider) {
        Registry registry = Registry.of(List.of(provider));
        assertEquals(List.of(), registry.providers());
        assertEquals(1, registry.problems().size(), registry.problems()::toString);
        return registry.problems().get(0);
    }
}
