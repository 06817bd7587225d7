package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.FlagNode;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.Sketch;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.RandomPatches;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("default-jdk")
class WhatMovesDocumentTest {

    private static final String ID = "urn:geneticsrules:schema:what-moves:0";
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
                    SpecificationVersion.DRAFT_2020_12,
                    builder -> builder.schemas(Map.of(ID, WhatMovesDocument.schema())))
            .getSchema(SchemaLocation.of(ID));

    private final Node silver =
            WhatMovesDocument.of(Sketch.comparison(Sketch.recessive()).whatMoves());

    @Test
    void the_schema_is_valid_and_names_itself() {
        Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertEquals(List.of(), meta.validate(WhatMovesDocument.schema(), InputFormat.JSON));
        assertTrue(WhatMovesDocument.schema().contains("\"$id\": \"" + ID + "\""));
    }

    @Test
    void what_moves_in_random_models_is_written_by_the_schema_and_in_whole_shares() {
        int written = 0;
        for (long seed = 0; seed < 12; seed++) {
            Model base = RandomModels.whole(seed);
            Optional<RandomPatches.Drawn> drawn = RandomPatches.draw(base, seed);
            if (drawn.isPresent()) {
                WhatMoves moves = Comparison.of(
                                base, drawn.get().patched(), List.of(drawn.get().patch()))
                        .whatMoves();
                Node document = WhatMovesDocument.of(moves);
                assertEquals(List.of(), SCHEMA.validate(Documents.write(document), InputFormat.JSON));
                for (String kind : List.of("genotypes", "matings")) {
                    for (Node one : items(at(document, kind, "smallest"))) {
                        wholeShares(at(one, "before"));
                        wholeShares(at(one, "after"));
                        written++;
                    }
                }
            }
        }
        assertTrue(written > 20, written + " examples");
    }

    private static void wholeShares(Node fate) {
        Probability sum = Probability.ZERO;
        if (((ObjectNode) fate).members().containsKey("looks")) {
            for (Node look : items(at(fate, "looks"))) {
                sum = sum.plus(chance(at(look, "probability")));
            }
            assertEquals(Probability.ONE, sum);
        } else {
            assertEquals(Probability.ONE, chance(at(fate, "lost")));
        }
    }

    private static Probability chance(Node chance) {
        return Probability.of(new BigInteger(text(chance, "numerator")), new BigInteger(text(chance, "denominator")));
    }

    @Test
    void a_document_that_leaves_out_or_makes_up_a_part_is_refused_by_the_schema() {
        String text = Documents.write(silver);
        assertEquals(List.of(), SCHEMA.validate(text, InputFormat.JSON));
        for (String damaged : List.of(
                text.replace("\"verdict\"", "\"sentence\""),
                text.replace("\"drivers\"", "\"driver\""),
                text.replace("\"replaced\"", "\"changed\""),
                text.replace("\"numerator\": \"3\"", "\"numerator\": 3"))) {
            assertTrue(!SCHEMA.validate(damaged, InputFormat.JSON).isEmpty(), damaged);
        }
    }

    @Test
    void the_silver_patch_is_written_with_its_example_and_what_drives_it() throws IOException {
        Node one = items(at(silver, "genotypes", "smallest")).get(0);
        assertEquals(List.of(Node.text("M"), Node.text("m")), items(at(one, "genotype", "pairs", "M")));
        assertEquals(List.of(Node.text("/loci/M/dominance")), items(at(one, "drivers")));
        assertEquals("moult 0", text(at(silver, "genotypes", "first"), "stage"));
        assertTrue(((FlagNode) at(silver, "genotypes", "more")).value());
        assertEquals("replaced", text(items(at(silver, "changes")).get(0), "kind"));
        String written = Documents.write(silver);
        assertEquals(
                silver,
                Tokeniser.read(Source.of("written", written), Limits.standard()).node());
    }

    private static Node at(Node node, String... names) {
        Node found = node;
        for (String name : names) {
            found = ((ObjectNode) found).members().get(name);
        }
        return found;
    }

    private static String text(Node node, String name) {
        return ((TextNode) at(node, name)).value();
    }

    private static List<Node> items(Node list) {
        return ((ListNode) list).items();
    }
}
