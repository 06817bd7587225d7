package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.HowSureQuestion;
import org.geneticsrules.answer.recorded.NextLitterQuestion;
import org.geneticsrules.answer.recorded.ParentageQuestion;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.answer.recorded.RegistryQuestion;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.RecordedText;
import org.geneticsrules.render.RegistryText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every answer about random pedigrees, contradictory ones among them, follows its schema and can be written as text. */
@Tag("default-jdk")
class RecordedDocumentTest {

    private static final Schema ANSWER = schema("recorded-answer", RecordedDocument.schema());
    private static final Schema REPORT = schema("registry-report", RegistryDocument.schema());

    private static Schema schema(String kind, String text) {
        String id = "urn:geneticsrules:schema:" + kind + ":0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(Map.of(id, text)))
                .getSchema(SchemaLocation.of(id));
    }

    @ParameterizedTest
    @ValueSource(strings = {"recorded-answer", "registry-report"})
    void the_schemas_are_valid_and_name_themselves(String kind) {
        Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        String text = Shared.schema(kind);
        assertEquals(List.of(), meta.validate(text, InputFormat.JSON));
        assertTrue(text.contains("\"$id\": \"urn:geneticsrules:schema:" + kind + ":0\""));
    }

    @Test
    void answers_follow_the_schema_whatever_is_recorded() {
        int conflicts = 0;
        int matings = 0;
        for (long seed = 0; seed < 20; seed++) {
            RandomPedigree random = RandomPedigrees.pedigree(seed);
            Model model = random.model();
            Pedigree pedigree = RecordedKindred.pedigree(model, random.kindred());
            RecordedAnswers asked = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree);
            List<String> ids = new ArrayList<>(pedigree.individuals().keySet());
            String locus = model.loci().keySet().iterator().next();
            HiddenAllele allele = new HiddenAllele(
                    locus, model.locus(locus).alleles().values().iterator().next());
            conflicts += follows(asked.mayCarry(ids.get(0), Set.of()), pedigree);
            Sampling rough = Sampling.seeded(seed).withStandardError(0.05).withWork(1e5);
            follows(asked.within(0).sampling(rough).mayCarry(ids.get(0), Set.of(locus)), pedigree);
            follows(asked.carrierTrail(ids.get(ids.size() - 1), allele), pedigree);
            for (Litter litter : pedigree.litters().values()) {
                follows(asked.parentage(ParentageQuestion.of(litter.id())), pedigree);
            }
            try {
                String trait = model.visibleTraits().iterator().next();
                follows(asked.nextLitter(NextLitterQuestion.of(ids.get(0), ids.get(1), Set.of(trait))), pedigree);
                follows(
                        asked.howSure(HowSureQuestion.of(ids.get(0), allele, ids.get(1))
                                .forKits(2)),
                        pedigree);
                matings++;
            } catch (ProblemsException refused) {
                assertTrue(
                        refused.problems().stream()
                                .allMatch(one -> Set.of(
                                                "wrong-sex",
                                                "sex-needed",
                                                "stage-needed",
                                                "sign-needed",
                                                "no-other-look",
                                                "not-modelled")
                                        .contains(one.code())),
                        refused::toString);
            }
            var report = asked.check(RegistryQuestion.ofRecords().carrying(List.of(allele)), Progress.NONE);
            assertEquals(List.of(), REPORT.validate(Documents.write(RegistryDocument.of(report)), InputFormat.JSON));
            fits(RegistryText.of(report, TextStyle.standard()));
        }
        assertTrue(conflicts > 0, conflicts + " contradictions");
        assertTrue(matings > 0, matings + " matings");
    }

    /** Follows the schema, and points to records that are there; tells whether records contradict one another. */
    private static int follows(RecordedAnswer answer, Pedigree pedigree) {
        Node document = RecordedDocument.of(answer);
        assertEquals(List.of(), ANSWER.validate(Documents.write(document), InputFormat.JSON), answer.verdict());
        fits(RecordedText.of(answer));
        answer.conflicts()
                .forEach(conflict -> conflict.records()
                        .forEach(one -> assertTrue(
                                isThere(PedigreeDocument.of(pedigree), Pointer.names(one.pointer())), one.pointer())));
        return answer.conflicts().isEmpty() ? 0 : 1;
    }

    private static boolean isThere(Node document, List<String> names) {
        Node at = document;
        for (String name : names) {
            if (at instanceof ObjectNode object && object.members().containsKey(name)) {
                at = Objects.requireNonNull(object.members().get(name));
            } else if (at instanceof ListNode list
                    && Integer.parseInt(name) < list.items().size()) {
                at = list.items().get(Integer.parseInt(name));
            } else {
                return false;
            }
        }
        return !(at instanceof TextNode text) || !text.toString().isEmpty();
    }

    private static void fits(String text) {
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
        assertTrue(text.endsWith("\n"));
    }
}
