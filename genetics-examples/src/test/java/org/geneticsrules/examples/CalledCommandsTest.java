package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names that animals were called by, in pedigrees and on the command line. Kennel and animals are invented. */
@Tag("default-jdk")
class CalledCommandsTest {

    @TempDir
    private Path folder;

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private static String flowing(Run run) {
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void a_kit_called_albino_makes_its_parents_carriers() throws IOException {
        String kennel = file("kennel.csv", """
                id,sex,litter,dam,sire,seen on,moult,light,called,called in
                Wicket,female,,,,,,,,
                Tarn,male,,,,,,,,
                Pip,,A,Wicket,Tarn,1998-11-02,1,daylight,albino,British Isles
                """);
        String out = flowing(Run.of("may-carry", "--pedigree", kennel, "--animal", "Wicket", "--loci", "C"));
        assertTrue(out.startsWith("By all records \"Wicket\" carries albino"), out);
        assertTrue(out.contains("Names that animals were called by mean what the vocabularies say"), out);
        String own = flowing(Run.of("may-carry", "--pedigree", kennel, "--animal", "Pip", "--loci", "C"));
        assertTrue(
                own.contains("given: \"Pip\": called \"albino\" (British Isles, 1998-11-02, at moult 1, in daylight)"),
                own);
        String registry = flowing(Run.of("registry", "--pedigree", kennel));
        assertTrue(registry.contains("Of 3 animals no records were found that contradict"), registry);
    }

    @Test
    void every_name_that_cannot_be_read_is_told_with_its_cell() throws IOException {
        String kennel = file("kennel.csv", """
                id,called,called in
                A,sandi,British Isles
                B,sandy,British Isle
                C,sandy,
                """);
        Run shape = Run.of("registry", "--pedigree", kennel);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, shape.code());
        assertTrue(shape.err().contains("kennel.csv:4:3"), shape.err());
        String other = file("other.csv", """
                id,called,called in
                A,sandi,British Isles
                B,sandy,British Isle
                """);
        Run run = Run.of("registry", "--pedigree", other);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertTrue(run.err().contains("other.csv:2:3"), run.err());
        assertTrue(run.err().contains("did you mean \"sandy\"?"), run.err());
        assertTrue(run.err().contains("other.csv:3:9"), run.err());
        assertTrue(run.err().contains("did you mean \"British Isles\"?"), run.err());
    }

    @Test
    void a_vocabulary_of_ones_own_is_read_beside_the_others() throws IOException {
        String own = file("own.json", """
                {"formatVersion": 0, "kind": "vocabulary", "id": "invented.yard", "version": "1", "region": "Our yard",
                 "catalogue": {"id": "geneticsrules.ferret.traits", "version": "1.1.0"},
                 "facets": {"colour": {}},
                 "names": {"snow": {"facet": "colour", "senses": {"only": {"looks": {"pink": {"eye colour": ["pink"]}}}}}}}
                """);
        String kennel = file("kennel.csv", "id,called,called in\nPip,Snow,our yard\n");
        String out = flowing(Run.of("may-carry", "--pedigree", kennel, "--animal", "Pip", "--loci", "C", "--own", own));
        assertTrue(out.contains("called \"Snow\" (our yard), which says eye colour: pink"), out);
        assertEquals(
                ExitCodes.NOT_UNDERSTOOD,
                Run.of("may-carry", "--pedigree", kennel, "--animal", "Pip", "--loci", "C")
                        .code());
        String document = file("kennel.json", """
                {"formatVersion": 0, "kind": "pedigree", "id": "invented.kennel", "version": "1",
                 "individuals": {"Pip": {"names": [{"word": "snow", "vocabulary": "Our yard"}]}}}
                """);
        assertEquals(ExitCodes.ANSWERED, Run.of("check", document, own).code());
        Run alone = Run.of("check", document);
        assertEquals(ExitCodes.NOT_UNDERSTOOD, alone.code());
        assertTrue(alone.err().contains("/individuals/Pip/names/0/vocabulary: unknown vocabulary"), alone.err());
    }

    @Test
    void a_single_animal_is_known_by_what_it_was_called() {
        String out = flowing(Run.of(
                "look-next",
                "--called",
                "colour: albino in British Isles on 1998-11-02 @ week 60, moult 1, in daylight",
                "--traits",
                "eye colour",
                "--population",
                "few carriers"));
        assertTrue(
                out.contains("called \"albino\" (British Isles, colour, 1998-11-02, at week 60, moult 1, in daylight)"),
                out);
        Run wrong = Run.of("look-next", "--called", "sandi in British Isles", "--called", "sandy in British Isle");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("did you mean \"sandy\"?"), wrong.err());
        assertTrue(wrong.err().contains("did you mean \"British Isles\"?"), wrong.err());
        Run form = Run.of("look-next", "--called", "sandy", "--called", "sandy in British Isles @ wek 3");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, form.code());
        assertTrue(form.err().contains("expected NAME in VOCABULARY"), form.err());
        assertTrue(form.err().contains("\"wek 3\" is no stage"), form.err());
    }

    @Test
    void coats_and_parents_are_known_by_what_they_were_called() {
        String coat = flowing(Run.of(
                "coat",
                "--called",
                "sandy in British Isles on 1998-11-02 @ week 60, moult 2",
                "--traits",
                "eye colour, dilution",
                "--moult",
                "2"));
        assertTrue(coat.contains("given: called \"sandy\" (British Isles, 1998-11-02, at week 60, moult 2)"), coat);
        assertTrue(coat.contains("dilution sandy"), coat);
        String litter = flowing(Run.of(
                "mating",
                "--sire-called",
                "albino in British Isles on 1998-11-02 @ week 60, moult 2",
                "--dam-called",
                "albino in British Isles on 1998-11-02 @ week 60, moult 2",
                "--traits",
                "eye colour",
                "--look",
                "eye colour: pink"));
        assertTrue(litter.contains("sire: called \"albino\" (British Isles, 1998-11-02, at week 60, moult 2)"), litter);
        assertTrue(litter.startsWith("A kit always shows eye colour pink"), litter);
        Run wrong = Run.of("coat", "--called", "albin in British Isles", "--called", "sandy in British Isle");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, wrong.code());
        assertTrue(wrong.err().contains("did you mean \"albino\"?"), wrong.err());
        assertTrue(wrong.err().contains("did you mean \"British Isles\"?"), wrong.err());
    }

    @Test
    void what_a_parent_was_called_is_read_as_said_of_its_sex() throws IOException {
        String own = file("own.json", """
                {"formatVersion": 0, "kind": "vocabulary", "id": "invented.yard", "version": "1", "region": "Our yard",
                 "catalogue": {"id": "geneticsrules.ferret.traits", "version": "1.1.0"},
                 "facets": {"colour": {}},
                 "names": {
                   "royal": {"facet": "colour", "senses": {"only": {"looks": {
                     "hob": {"sex": ["male"], "eye colour": ["pink"]},
                     "jill": {"sex": ["female"], "eye colour": ["dark"]}}}}}}}
                """);
        String sired = royal(own, "--sire-called", "--dam");
        assertTrue(sired.startsWith("A kit always shows eye colour pink"), sired);
        assertTrue(sired.contains("sire: called \"royal\" (Our yard, 2020-03"), sired);
        String borne = royal(own, "--dam-called", "--sire");
        assertTrue(borne.startsWith("It is possible that a kit shows eye colour pink"), borne);
        assertFalse((sired + borne).contains("depends on the sex"), sired + borne);
    }

    private static String royal(String own, String called, String other) {
        return flowing(Run.of(
                "mating",
                "--own",
                own,
                called,
                "royal in Our yard on 2020-03 @ week 60, moult 2, in daylight",
                other,
                "c/c",
                "--traits",
                "eye colour",
                "--look",
                "eye colour: pink"));
    }

    @Test
    void of_two_sires_it_is_not_known_which_was_called_so() {
        Run run = Run.of(
                "mating",
                "--sire",
                "C/c",
                "--other-sire",
                "C/C",
                "--dam",
                "C/c",
                "--sire-called",
                "albino in British Isles",
                "--traits",
                "eye colour");
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals(
                "problem: --sire-called does not say which of 2 males was called so; describe them by --sire-look and"
                        + " --other-sire-look\n",
                run.err());
    }
}
