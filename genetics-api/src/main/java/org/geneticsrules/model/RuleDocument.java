package org.geneticsrules.model;

import java.util.Map;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/** The document form of trait rules and masks. */
final class RuleDocument {

    private RuleDocument() {}

    static Node of(TraitRule rule) {
        ObjectBuilder cases = new ObjectBuilder();
        for (Case one : rule.cases()) {
            ObjectBuilder node = new ObjectBuilder().with("when", one.when().toNode());
            gives(one.gives(), node);
            cases.with(one.id(), node.with("evidence", one.evidence()).build());
        }
        ObjectBuilder node = new ObjectBuilder();
        if (!rule.visible()) {
            node.with("visible", Node.flag(false)).withAny("states", rule.states());
        }
        node.with("cases", cases.build());
        rule.otherwise().ifPresent(rest -> node.with("otherwise", otherwise(rest)));
        return node.with("evidence", rule.evidence()).build();
    }

    /** A bare text where nothing but a state is stated. */
    private static Node otherwise(Case rest) {
        if (rest.gives() instanceof CaseState.Certain certain && rest.evidence().isEmpty()) {
            return Node.text(certain.state());
        }
        ObjectBuilder node = new ObjectBuilder();
        gives(rest.gives(), node);
        return node.with("evidence", rest.evidence()).build();
    }

    private static void gives(CaseState gives, ObjectBuilder node) {
        if (gives instanceof CaseState.Certain certain) {
            node.with("state", certain.state());
        } else if (gives instanceof CaseState.Chance chance) {
            node.with("chance", chances(chance.chances()));
        } else if (gives instanceof CaseState.Progression progression) {
            node.with("progression", progression(progression));
        } else if (gives instanceof CaseState.Threshold threshold) {
            node.with("threshold", threshold(threshold));
        }
    }

    private static Node progression(CaseState.Progression progression) {
        ObjectBuilder steps = new ObjectBuilder();
        progression.step().forEach((from, to) -> steps.with(from, chances(to)));
        ObjectBuilder node = new ObjectBuilder()
                .with("clock", progression.clock().word())
                .with("start", chances(progression.start()))
                .with("step", steps.build());
        if (progression.monotone()) {
            node.with("monotone", Node.flag(true));
        }
        return node.build();
    }

    private static Node threshold(CaseState.Threshold threshold) {
        ObjectBuilder doses = new ObjectBuilder();
        threshold.doses().forEach((locus, dose) -> doses.with(locus, numbers(dose)));
        ObjectBuilder node = new ObjectBuilder().with("doses", doses.build());
        if (!threshold.residual().equals(Distribution.certain(0))) {
            node.with("residual", chances(threshold.residual()));
        }
        return node.with("below", threshold.below())
                .with("cuts", numbers(threshold.cuts()))
                .build();
    }

    private static Node numbers(Map<String, Integer> numbers) {
        ObjectBuilder node = new ObjectBuilder();
        numbers.forEach((name, number) -> node.with(name, Node.number(number)));
        return node.build();
    }

    private static Node chances(Distribution<?> chances) {
        ObjectBuilder node = new ObjectBuilder();
        chances.asMap().forEach((outcome, chance) -> node.with(outcome.toString(), chance.toString()));
        return node.build();
    }

    static Node chances(Map<String, Probability> chances) {
        ObjectBuilder node = new ObjectBuilder();
        chances.forEach((outcome, chance) -> node.with(outcome, chance.toString()));
        return node.build();
    }

    static Node of(Mask mask) {
        ObjectBuilder covers = new ObjectBuilder();
        mask.covers().forEach((trait, cover) -> {
            ObjectBuilder changes = new ObjectBuilder();
            cover.changes().forEach(changes::with);
            covers.with(trait, cover.constant().map(Node::text).orElseGet(changes::build));
        });
        return new ObjectBuilder()
                .with("when", mask.when().toNode())
                .with("covers", covers.build())
                .withAny("over", mask.over())
                .with("evidence", mask.evidence())
                .build();
    }
}
