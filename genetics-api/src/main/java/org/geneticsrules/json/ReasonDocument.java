package org.geneticsrules.json;

import java.util.List;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.explanation.AnimalCase;
import org.geneticsrules.explanation.Look;
import org.geneticsrules.explanation.Miss;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Phase;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Sex;

/** The document form of reasons, complete enough to compute the numbers again. Stateless and thread-safe. */
final class ReasonDocument {

    private ReasonDocument() {}

    static Node of(Reason reason) {
        if (reason instanceof ParentsCase parents) {
            return parents(parents);
        }
        if (reason instanceof AnimalCase animal) {
            return animal(animal);
        }
        if (reason instanceof Miss miss) {
            return miss(miss);
        }
        return reason instanceof Way way ? way(way) : look((Look) reason);
    }

    /** The alleles by id, in declared order: two, one where the animal has one strand, none where it lacks the chromosome. */
    static Node pair(AllelePair pair) {
        return Node.texts(pair.alleles().stream().map(Allele::id).toList());
    }

    private static Node parents(ParentsCase parents) {
        ObjectBuilder loci = new ObjectBuilder();
        parents.loci().forEach((locus, segregation) -> loci.with(locus, segregation(segregation)));
        return new ObjectBuilder()
                .with("kind", "parents")
                .with("case", Node.number(parents.number()))
                .with("sire", Node.number(parents.sire()))
                .with("sex", parents.kit().map(Sex::word))
                .with("probability", Chances.of(parents.probability()))
                .with("counted", Chances.of(parents.counted()))
                .with("loci", loci.build())
                .build();
    }

    private static Node animal(AnimalCase animal) {
        ObjectBuilder pairs = new ObjectBuilder();
        animal.pairs().forEach((locus, pair) -> pairs.with(locus, pair(pair)));
        ObjectBuilder expressions = new ObjectBuilder();
        animal.expressions().forEach(expressions::with);
        return new ObjectBuilder()
                .with("kind", "animal")
                .with("case", Node.number(animal.number()))
                .with("sex", animal.sex().map(Sex::word))
                .with("counted", Chances.of(animal.counted()))
                .with("pairs", pairs.build())
                .with("expressions", expressions.build())
                .build();
    }

    private static Node miss(Miss miss) {
        return new ObjectBuilder()
                .with("kind", "miss")
                .with("test", Node.number(miss.test()))
                .with("step", miss.step())
                .with("population", miss.population())
                .with("chances", Chances.of(miss.chances(), "missed", Chances::of))
                .build();
    }

    private static Node segregation(Segregation segregation) {
        ObjectBuilder node =
                new ObjectBuilder().with("sire", Chances.of(segregation.sire(), "pair", ReasonDocument::pair));
        segregation.sireStrands().ifPresent(strands -> node.with("sireStrands", strands(strands)));
        node.with("dam", Chances.of(segregation.dam(), "pair", ReasonDocument::pair));
        segregation.damStrands().ifPresent(strands -> node.with("damStrands", strands(strands)));
        return node.with("kits", Chances.of(segregation.kits(), "pair", ReasonDocument::pair))
                .with("expressions", Chances.of(segregation.expressions(), "expression", Node::text))
                .build();
    }

    private static Node strands(Phase.Strands strands) {
        return Node.texts(List.of(strands.one().id(), strands.other().id()));
    }

    private static Node way(Way way) {
        ObjectBuilder expressions = new ObjectBuilder();
        way.expressions().variables().forEach((locus, allowed) -> expressions.with(locus, allowed(allowed)));
        ObjectBuilder factors = new ObjectBuilder();
        way.factors().forEach((locus, chance) -> factors.with(locus, Chances.of(chance)));
        return new ObjectBuilder()
                .with("kind", "way")
                .with("phenotype", AnswerDocument.phenotype(way.phenotype()))
                .with("case", Node.number(way.parents()))
                .with("expressions", expressions.build())
                .with("factors", factors.build())
                .with("probability", Chances.of(way.probability()))
                .with("masks", Node.texts(way.masks()))
                .build();
    }

    /** As conditions are written in models. */
    private static Node allowed(Allowed allowed) {
        Node values = Node.texts(allowed.values());
        return allowed.except() ? new ObjectBuilder().with("not", values).build() : values;
    }

    private static Node look(Look look) {
        TraitTrace trace = look.trace();
        return new ObjectBuilder()
                .with("kind", "look")
                .with("trait", trace.trait())
                .with("own", trace.own())
                .with("rule", trace.rule())
                .with("text", look.rule())
                .with("reads", Node.texts(trace.reads()))
                .with("draw", trace.draw())
                .with("shown", trace.shown())
                .with("masks", Node.texts(trace.masks()))
                .build();
    }
}
