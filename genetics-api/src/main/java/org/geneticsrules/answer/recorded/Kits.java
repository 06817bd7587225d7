package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.trait.LifeStage;

/** What the looks of kits rest on. */
final class Kits {

    private Kits() {}

    /** The statements by which kits look as they do in some traits. */
    static Set<String> statements(CompiledModel compiled, List<String> traits, LifeStage stage) {
        View view = new View(traits, stage, Census.CONCEIVED);
        Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
        for (String locus : compiled.lociRead(view)) {
            pairs.put(locus, new ArrayList<>(compiled.model().locus(locus).pairs()));
        }
        return RestsOn.of(compiled, pairs, view).statements();
    }
}
