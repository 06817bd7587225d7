package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.ProviderDescriptor;
import org.geneticsrules.spi.Registry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ShippedDocumentsTest {

    static List<Path> hypothesisFiles() {
        return Ferret.hypothesisFiles();
    }

    @Test
    void everything_shipped_loads_without_a_problem() {
        assertEquals(List.of(), Ferret.REGISTRY.problems());
        assertEquals(1, Ferret.REGISTRY.catalogues().size());
        assertEquals(1, Ferret.REGISTRY.cautions(Ferret.common()).size());
    }

    @Test
    void every_document_in_the_folder_is_listed() {
        List<String> shipped = Ferret.jsonFiles(Ferret.SHIPPED).stream()
                .map(file -> file.getFileName().toString())
                .toList();
        assertEquals(shipped, new FerretProvider().documents().stream().sorted().toList());
    }

    @Test
    void a_document_that_is_not_shipped_is_refused_by_name() {
        FileNotFoundException refusal =
                assertThrows(FileNotFoundException.class, () -> new FerretProvider().open("otter.json"));
        assertEquals("otter.json", refusal.getMessage());
    }

    @Test
    void the_descriptor_names_the_organism_and_the_default_model() {
        ProviderDescriptor plugin = Ferret.REGISTRY.providers().get(0);
        assertEquals(
                "Mustela furo (NCBI Taxonomy 9669)",
                plugin.taxon().orElseThrow().toString());
        assertEquals(Optional.of(Ferret.common()), Ferret.REGISTRY.defaultModel(plugin));
        assertEquals(Optional.of(plugin.licence()), Ferret.common().licence());
        assertEquals(plugin.taxon(), Ferret.common().taxon());
    }

    /** The content belongs to the version: whoever changes a document gives it a new version, and then a new hash here. */
    @Test
    void the_content_of_each_version_is_pinned() {
        ProviderDescriptor plugin = Ferret.REGISTRY.providers().get(0);
        assertEquals(
                List.of(
                        "geneticsrules.ferret.traits 1.0.0 818e5924591205c7a87e2de05828bf3e97336235724748de6bd9307f6c86cf71",
                        "geneticsrules.ferret.common-practice 0.1.0 11d4b284894e71f181315b26f4f619bf82b9204cb8eab74e43d5e4c01b65dff6",
                        "geneticsrules.ferret.cautions 0.1.0 d6152a1c09c014e708a9102a512852654458f116518dd7c1818b18b253e54fe1",
                        "geneticsrules.ferret 0.1.0 27d5e95faf05276910bfc425b916cb732b2fea2a8f7f23e5a27a9139b52bbe7c"),
                List.of(
                        pin(Ferret.catalogue().reference()), pin(Ferret.common().reference()),
                        pin(Ferret.cautions().reference()),
                                pin(new Reference(plugin.id(), plugin.version(), plugin.sha256()))));
    }

    private static String pin(Reference reference) {
        return reference.id() + " " + reference.version() + " "
                + reference.sha256().orElseThrow();
    }

    @Test
    void the_plug_in_is_discovered_and_served_from_where_it_is() {
        Registry discovered = Registry.discover();
        assertEquals(List.of(), discovered.problems());
        assertEquals(
                List.of("geneticsrules.ferret"),
                discovered.providers().stream().map(ProviderDescriptor::id).toList());
        assertEquals(
                Ferret.REGISTRY.providers().get(0).sha256(),
                discovered.source(Ferret.common()).orElseThrow().provider().sha256());
    }

    @Test
    void the_class_path_and_the_module_path_name_the_same_provider() throws IOException {
        Path file = Ferret.MODULE.resolve("src/main/resources/META-INF/services/" + GeneticsProvider.class.getName());
        assertEquals(List.of(FerretProvider.class.getName()), Files.readAllLines(file));
        Module module = FerretProvider.class.getModule();
        assertTrue(module.isNamed(), "the tests run in the module");
        assertEquals(
                List.of(FerretProvider.class.getName()),
                module.getDescriptor().provides().iterator().next().providers());
    }

    @ParameterizedTest
    @MethodSource("hypothesisFiles")
    void a_hypothesis_speaks_of_the_shipped_catalogue(Path file) {
        Model hypothesis = Ferret.hypothesis(file);
        assertEquals(Ferret.catalogue().reference(), hypothesis.catalogue().reference());
        assertTrue(Ferret.catalogue().traits().keySet().containsAll(hypothesis.visibleTraits()), hypothesis::toString);
        assertEquals(List.of(Ferret.cautions()), Ferret.REGISTRY.cautions(hypothesis));
        assertEquals(Optional.empty(), Ferret.REGISTRY.source(hypothesis));
    }
}
