package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.ProviderDescriptor;
import org.geneticsrules.spi.Registry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TextbookProviderTest {

    static List<Model> models() {
        return Textbook.models();
    }

    @Test
    void everything_in_the_folder_is_listed_and_loads_without_a_problem() throws IOException {
        assertEquals(List.of(), Textbook.REGISTRY.problems());
        try (Stream<Path> files = Files.list(Textbook.SHIPPED)) {
            assertEquals(
                    files.map(file -> file.getFileName().toString()).sorted().toList(),
                    new TextbookProvider().documents().stream().sorted().toList());
        }
        assertThrows(FileNotFoundException.class, () -> new TextbookProvider().open("otter.json"));
    }

    @ParameterizedTest
    @MethodSource("models")
    void every_model_and_every_statement_names_its_source(Model model) {
        assertEquals(Optional.of("Apache-2.0"), model.licence());
        assertFalse(model.evidence().isEmpty());
        for (Evidence evidence : model.evidence().values()) {
            assertFalse(evidence.sources().isEmpty(), evidence::toString);
            evidence.sources().forEach(source -> assertTrue(source.length() > 10, source));
        }
        for (Statement statement : model.statements().values()) {
            assertTrue(statement.evidence().isPresent(), statement::toString);
        }
    }

    @ParameterizedTest
    @MethodSource("models")
    void every_trait_of_the_catalogue_is_modelled_or_the_model_says_why_not(Model model) {
        Set<String> spoken = new LinkedHashSet<>(model.visibleTraits());
        spoken.addAll(model.notModelled().keySet());
        assertEquals(model.catalogue().traits().keySet(), spoken);
    }

    @Test
    void both_plug_ins_are_discovered_side_by_side() {
        Registry discovered = Registry.discover();
        assertEquals(List.of(), discovered.problems());
        assertEquals(
                List.of("geneticsrules.ferret", "geneticsrules.textbook"),
                discovered.providers().stream().map(ProviderDescriptor::id).toList());
        ProviderDescriptor textbook = discovered.providers().get(1);
        assertEquals(
                "geneticsrules.textbook.pea",
                discovered.defaultModel(textbook).orElseThrow().id());
        assertEquals(
                textbook,
                discovered
                        .source(discovered.model("geneticsrules.textbook.mouse"))
                        .orElseThrow()
                        .provider());
    }

    @Test
    void the_cautions_of_one_plug_in_do_not_speak_about_the_models_of_another() {
        Registry discovered = Registry.discover();
        assertEquals(List.of(), discovered.cautions(discovered.model("geneticsrules.textbook.pea")));
        assertEquals(
                1,
                discovered
                        .cautions(discovered.model("geneticsrules.ferret.common-practice"))
                        .size());
    }

    @Test
    void the_class_path_and_the_module_path_name_the_same_provider() throws IOException {
        Path file = Textbook.MODULE.resolve("src/main/resources/META-INF/services/" + GeneticsProvider.class.getName());
        assertEquals(List.of(TextbookProvider.class.getName()), Files.readAllLines(file));
        assertEquals(
                List.of(TextbookProvider.class.getName()),
                TextbookProvider.class
                        .getModule()
                        .getDescriptor()
                        .provides()
                        .iterator()
                        .next()
                        .providers());
    }
}
