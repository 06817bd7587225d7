package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.geneticsrules.vocabulary.VocabularyBuilder;

/**
 * What follows from names against a list of every way in which a pedigree may have come about, which knows nothing of names: there, the
 * animals were seen to show one of the looks that the names cover.
 */
@Once
class NamedRecordsLaws {

    private static final double CLOSE = 1e-12;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    /** A pedigree in which looks are replaced by names for them, and the names. */
    private record Renamed(Pedigree pedigree, Vocabulary vocabulary, int names, int several) {}

    private static Renamed renamed(Model model, Pedigree seen) {
        VocabularyBuilder words = Vocabulary.builder("random.words", "1", model.catalogue())
                .region("Anywhere")
                .facet(Facet.of("whole"));
        Map<Set<Phenotype>, String> names = new LinkedHashMap<>();
        PedigreeBuilder pedigree = Pedigree.builder(seen.id(), seen.version());
        int count = 0;
        int several = 0;
        for (Individual one : seen.individuals().values()) {
            List<Observation> left = new ArrayList<>();
            List<CalledName> called = new ArrayList<>();
            for (Observation look : one.observations()) {
                if (look.traits().contains(Sex.VARIABLE) || excludesNothing(model, look)) {
                    left.add(look);
                    continue;
                }
                String word = names.computeIfAbsent(look.looks(), looks -> {
                    String name = "word " + names.size();
                    words.name(name(name, looks));
                    return name;
                });
                called.add(CalledName.of(word, count % 2 == 0 ? "anywhere" : "words")
                        .at(look.stage()));
                count++;
                several += look.looks().size() > 1 ? 1 : 0;
            }
            pedigree.add(new Individual(
                    one.id(),
                    one.sex(),
                    one.born(),
                    one.population(),
                    left,
                    called,
                    one.tests(),
                    one.hearing(),
                    one.fertility()));
        }
        seen.litters().values().forEach(pedigree::add);
        return new Renamed(pedigree.build(), words.build(), count, several);
    }

    /** No vocabulary has a name for what every animal is. */
    private static boolean excludesNothing(Model model, Observation look) {
        int all = look.traits().stream()
                .mapToInt(trait ->
                        model.catalogue().trait(trait).orElseThrow().states().size())
                .reduce(1, (one, other) -> one * other);
        return look.looks().size() == all;
    }

    /** Each look alone is a condition; together they are what the name means. */
    private static Name name(String word, Set<Phenotype> looks) {
        Sense sense = Sense.of("only");
        int number = 0;
        for (Phenotype look : looks) {
            Condition here = Condition.always();
            for (Map.Entry<String, String> state : look.asMap().entrySet()) {
                here = here.and(state.getKey(), state.getValue());
            }
            sense = sense.withLook("look " + number++, here);
        }
        return Name.of(word, "whole").withSense(sense);
    }

    @Property(tries = 100)
    void a_name_is_evidence_as_the_looks_that_it_covers_are(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Worlds worlds = Worlds.of(random.genome(), kindred);
        Renamed renamed = renamed(random.model(), RecordedKindred.pedigree(random.model(), kindred));
        NamedRecords read = NamedRecords.of(renamed.pedigree(), List.of(renamed.vocabulary()), random.model());
        assertEquals(renamed.names(), read.readings().size());
        assertEquals(renamed.pedigree(), read.stated());
        Conclusions found = Inference.of(CompiledModel.of(random.model()), read.pedigree())
                .with(RecordedKindred.confusions(kindred))
                .conclude();
        Statistics.label("names")
                .collect(renamed.names() == 0 ? "none" : renamed.several() > 0 ? "of several looks" : "of one look");
        Statistics.label("records").collect(worlds.size() == 0 ? "contradict" : "fit");
        if (worlds.size() == 0) {
            assertFalse(found.isConsistent());
        } else {
            assertTrue(found.isConsistent());
            for (Kindred.Member member : kindred.members()) {
                for (String locus : random.model().loci().keySet()) {
                    Map<String, Probability> expected = worlds.genotypes(member.id(), locus);
                    for (Map.Entry<AllelePair, Double> one :
                            found.at(member.id(), locus).orElseThrow().chances().entrySet()) {
                        double chance = expected.getOrDefault(InferenceLaws.name(one.getKey()), Probability.ZERO)
                                .toDouble();
                        assertEquals(chance, one.getValue(), CLOSE, () -> member.id() + " " + one.getKey());
                    }
                }
            }
        }
        Statistics.label("names").coverage(coverage -> {
            // about 22 of 100 are: that none of 100 is happens once in 10^10
            coverage.check("of several looks").count(count -> count > 0);
            coverage.check("of one look").percentage(share -> share > 20);
        });
        Statistics.label("records").coverage(coverage -> coverage.check("fit").percentage(share -> share > 50));
    }
}
