package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.ProviderDescriptor;
import org.geneticsrules.spi.Registry;
import org.junit.jupiter.api.Test;

class ShippedDocumentsTest {

    @Test
    void everything_shipped_loads_without_a_problem() {
        assertEquals(List.of(), Ferret.REGISTRY.problems());
        assertEquals(1, Ferret.REGISTRY.catalogues().size());
        assertEquals(Ferret.DOCUMENTS.stream().map(Ferret::model).toList(), Ferret.REGISTRY.models());
        for (Model model : Ferret.REGISTRY.models()) {
            assertEquals(List.of(Ferret.cautions()), Ferret.REGISTRY.cautions(model), model::toString);
            assertEquals(Ferret.catalogue().reference(), model.catalogue().reference(), "rivals can be compared");
        }
        assertEquals(3, Ferret.REGISTRY.vocabularies(Ferret.catalogue()).size());
        assertEquals(
                Ferret.REGISTRY.patches(), Ferret.REGISTRY.patches(Ferret.common()), "all are about this very content");
    }

    @Test
    void every_document_in_the_folder_is_listed() {
        List<String> shipped = Ferret.jsonFiles(Ferret.SHIPPED).stream()
                .map(file -> Ferret.SHIPPED.relativize(file).toString())
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

    /** The content belongs to the version: whoever changes a document gives it a new version, and then a new hash in the list. */
    @Test
    void the_content_of_each_version_is_pinned() throws IOException {
        ProviderDescriptor plugin = Ferret.REGISTRY.providers().get(0);
        List<Reference> served = new ArrayList<>();
        served.add(Ferret.catalogue().reference());
        Ferret.REGISTRY.models().forEach(model -> served.add(model.reference()));
        served.add(Ferret.cautions().reference());
        Ferret.REGISTRY.patches().forEach(patch -> served.add(patch.reference()));
        Ferret.REGISTRY.vocabularies().forEach(names -> served.add(names.reference()));
        served.add(new Reference(plugin.id(), plugin.version(), plugin.sha256()));
        assertEquals(
                Files.readAllLines(Ferret.CHECKS.resolve("pins.txt")),
                served.stream().map(ShippedDocumentsTest::pin).toList());
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
        ModuleReference module = ModuleFinder.of(Ferret.MODULE.resolve("target/classes"))
                .find("org.geneticsrules.ferret")
                .orElseThrow();
        assertEquals(
                List.of(FerretProvider.class.getName()),
                module.descriptor().provides().iterator().next().providers());
    }
}
