package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.geneticsrules.json.NamedDocument;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands about names, asked of the ferret vocabularies; what their names mean is checked beside their documents. */
@Tag("default-jdk")
class NameCommandsTest {

    private static final String PALE = "hue: black, dilution: sandy, eye colour: dark, white guard hairs: none,"
            + " trunk suppression: absent, trunk depth: standard";

    private static final String OWN = """
            {"formatVersion": 0, "kind": "vocabulary", "id": "example.own", "version": "1.0.0", "region": "Our valley",
             "catalogue": {"id": "geneticsrules.ferret.traits", "version": "1.1.0"},
             "facets": {"colour": {}},
             "names": {"biscuit": {"facet": "colour",
                "senses": {"usual": {"looks": {"pale": {"dilution": ["sandy"]}}}}}}}
            """;

    private static final String TWO_THINGS = OWN.replace(
                    "\"facets\": {\"colour\": {}}", "\"facets\": {\"colour\": {}, \"marks\": {}}")
            .replace("\"names\": {", """
                    "names": {"Biscuit": {"facet": "marks",
                       "senses": {"usual": {"looks": {"bib": {"throat": ["bib"]}}}}},
                    """);

    @TempDir
    private Path folder = Path.of("");

    private static String answered(String... line) {
        Run run = Run.of(line);
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        assertEquals("", run.err());
        return run.out();
    }

    /** The text of an answer, without its lines, which are no longer than they may be. */
    private static String unwrapped(String text) {
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
        return text.replaceAll("\\s+", " ");
    }

    private static String refused(String... line) {
        Run run = Run.of(line);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code(), run.out());
        assertEquals("", run.out());
        return run.err();
    }

    @Test
    void one_animal_has_other_names_in_other_regions() {
        String text = unwrapped(answered("name", "--look", PALE, "--moult", "2", "--season", "winter"));
        assertTrue(text.startsWith("British Isles: \"champagne\""), text);
        assertTrue(text.contains("Continental Europe: \"champagne\""), text);
        assertTrue(text.contains("- not \"cinnamon\": hue is black, and would have to be reddish brown"), text);
        String one = unwrapped(answered("name", "--look", PALE, "--in", "north-america"));
        assertFalse(one.contains("British Isles"), one);
    }

    @Test
    void a_name_says_what_it_may_mean_and_warns() {
        String text = unwrapped(answered("meaning", "Panda", "--in", "british isles", "--on", "2020-05"));
        assertTrue(
                text.startsWith("\"Panda\" in British Isles has one sense, and says: head white: whole head."), text);
        assertTrue(text.contains("White on the head goes with deafness in some ferrets"), text);
        String two = unwrapped(answered("meaning", "sandy", "--in", "british-isles"));
        assertTrue(two.startsWith("\"sandy\" in British Isles has 2 senses: \"usual\", \"wide\"."), two);
        assertTrue(two.contains("was said without a date"), two);
    }

    @Test
    void a_name_is_converted_and_the_loss_is_told() {
        String text = unwrapped(answered("convert", "sandy", "--from", "British Isles", "--to", "North America"));
        assertTrue(text.startsWith("No name in North America means exactly \"sandy\"; the nearest is"), text);
        assertTrue(text.contains("It does not mean:"), text);
        String renamed = unwrapped(
                answered("convert", "shetland", "--from", "north-america", "--on", "1997", "--to", "north-america"));
        assertTrue(renamed.startsWith("\"shetland\" is \"blaze\" or \"badger\" in North America"), renamed);
    }

    @Test
    void json_follows_the_schema() {
        String id = "urn:geneticsrules:schema:named-answer:0";
        var schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, NamedDocument.schema())))
                .getSchema(SchemaLocation.of(id));
        for (String json : List.of(
                answered("name", "--look", PALE, "--format", "json"),
                answered("meaning", "sandy", "--in", "british-isles", "--format", "json"),
                answered("convert", "sandy", "--from", "british-isles", "--to", "north-america", "--format", "json"))) {
            assertEquals(List.of(), schema.validate(json, InputFormat.JSON));
        }
    }

    @Test
    void what_is_misspelt_is_named_with_what_was_expected() {
        String nowhere = refused("meaning", "sandy", "--in", "atlantis");
        assertTrue(nowhere.contains("--in") && nowhere.contains("geneticsrules.ferret.names.british-isles"), nowhere);
        String near = refused("convert", "sandy", "--from", "British Isles", "--to", "Nort America");
        assertTrue(near.contains("--to: no vocabulary is called \"Nort America\""), near);
        assertTrue(near.contains("\"North America\"?"), near);
        assertTrue(refused("meaning", "sandy", "--in", "british-isle").contains("\"british-isles\"?"));
        String word = refused("meaning", "sandi", "--in", "british-isles");
        assertTrue(word.contains("sandi") && word.contains("\"sandy\""), word);
        String from = refused("convert", "sandi", "--from", "british-isles", "--to", "north-america");
        assertTrue(from.contains("\"sandy\""), from);
        String look = refused("name", "--look", "huee: black");
        assertTrue(look.contains("hue"), look);
        String day = refused("meaning", "sandy", "--in", "british-isles", "--on", "30.5.1999");
        assertTrue(day.contains("--on") && day.contains("1999-05-30"), day);
        String format = refused("name", "--look", PALE, "--format", "xml");
        assertTrue(format.contains("--format"), format);
        String early = refused("meaning", "shetland", "--in", "north-america", "--on", "2015");
        assertTrue(early.contains("nobody said \"shetland\""), early);
    }

    @Test
    void a_word_that_stands_for_several_things_is_asked_for_by_facet() throws IOException {
        String file = Files.writeString(folder.resolve("two.json"), TWO_THINGS).toString();
        String several = refused("meaning", "biscuit", "--in", "our valley", "--own", file);
        assertTrue(several.contains("\"biscuit\" is said of several things"), several);
        assertTrue(several.contains("Say which is meant by --facet \"marks\" or --facet \"colour\"."), several);
        String colour = answered("meaning", "biscuit", "--in", "our valley", "--own", file, "--facet", "colour");
        assertTrue(colour.contains("dilution: sandy"), colour);
        String marks = answered("meaning", "biscuit", "--in", "our valley", "--own", file, "--facet", "marks");
        assertTrue(marks.contains("throat: bib"), marks);
        String facet = refused("meaning", "biscuit", "--in", "our valley", "--own", file, "--facet", "color");
        assertTrue(facet.contains("--facet: ") && facet.contains("\"colour\"?"), facet);
        String[] convert = {"convert", "biscuit", "--from", "our valley", "--to", "our valley", "--own", file};
        assertTrue(refused(convert).contains("--facet \"marks\""));
        List<String> longer = new ArrayList<>(List.of(convert));
        longer.addAll(List.of("--facet", "marks"));
        String converted = answered(longer.toArray(new String[0]));
        assertTrue(converted.startsWith("\"biscuit\" is \"Biscuit\" in Our valley"), converted);
        String two = refused("meaning", "biscuit", "--in", "our valley", "--own", file, "--own", file);
        assertTrue(two.contains("several vocabularies are called \"our valley\""), two);
    }

    @Test
    void a_year_is_any_of_its_days() {
        List<String> look =
                List.of("name", "--look", "head white: narrow stripe", "--moult", "2", "--in", "north-america", "--on");
        List<String> in1997 = new ArrayList<>(look);
        in1997.add("1997");
        String text = unwrapped(answered(in1997.toArray(new String[0])));
        assertTrue(text.contains("- given: in 1997"), text);
        assertTrue(text.contains("- perhaps \"shetland\"; in use until 1997-11"), text);
        List<String> inNovember = new ArrayList<>(look);
        inNovember.add("1997-11");
        text = unwrapped(answered(inNovember.toArray(new String[0])));
        assertTrue(text.contains("- is \"shetland\""), text);
        String said = answered(
                "convert",
                "shetland",
                "--from",
                "north-america",
                "--on",
                "1997",
                "--to",
                "north-america",
                "--to-day",
                "1997");
        assertTrue(unwrapped(said).contains("\"shetland\": exactly the same"), said);
        assertTrue(said.contains("to be named in 1997"), said);
    }

    @Test
    void a_vocabulary_of_ones_own_is_read_beside_the_others() throws IOException {
        String file = Files.writeString(folder.resolve("own.json"), OWN).toString();
        String text = unwrapped(answered("name", "--look", PALE, "--own", file));
        assertTrue(text.contains("Our valley: \"biscuit\""), text);
        assertTrue(text.contains("British Isles: "), text);
        String said = answered("meaning", "biscuit", "--in", "our valley", "--own", file);
        assertTrue(said.contains("dilution: sandy"), said);
        String wrong = Files.writeString(folder.resolve("wrong.json"), OWN.replace("[\"sandy\"]", "[\"sandi\"]"))
                .toString();
        String problem = refused("name", "--look", PALE, "--own", wrong);
        assertTrue(problem.contains("sandi") && problem.contains("\"sandy\""), problem);
    }

    @ParameterizedTest
    @ValueSource(strings = {"name", "meaning", "convert"})
    void each_has_help_with_an_example(String command) {
        String help = answered(command, "--help");
        for (String part :
                List.of("Usage: ", "  genetics " + command + " ", "--own=FILE", "--on=DATE", "--format=FORMAT")) {
            assertTrue(help.contains(part), part + " is missing in " + help);
        }
    }
}
