package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LikelihoodRatioTest {

    @Test
    void at_a_boundary_p_is_halved() {
        double half = 3.841458820694124 / 2;
        assertEquals(0.05, LikelihoodRatio.of(-10 - half, -10).p(), 1e-12);
        assertEquals(0.025, LikelihoodRatio.atBoundary(-10 - half, -10).p(), 1e-12);
        assertEquals(1, LikelihoodRatio.atBoundary(-10, -10).p());
        assertEquals(1, LikelihoodRatio.of(-10, -10).p());
    }

    /** Calculated: a LOD of 3 is a statistic of 6 ln 10 = 13.8155, whose halved tail is just below 1e-4. */
    @Test
    void three_units_of_lod() {
        LikelihoodRatio test = LikelihoodRatio.atBoundary(-3 * Math.log(10), 0);
        assertEquals(13.8155, test.statistic(), 5e-5);
        assertEquals(1.0e-4, test.p(), 1e-6);
    }

    @Test
    void impossible_under_the_hypothesis() {
        assertEquals(0, LikelihoodRatio.of(Double.NEGATIVE_INFINITY, -3).p());
        assertThrows(IllegalArgumentException.class, () -> LikelihoodRatio.of(-3, Double.NEGATIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> LikelihoodRatio.of(Double.NaN, -3));
        assertThrows(IllegalArgumentException.class, () -> new LikelihoodRatio(1, 2, true));
        assertEquals(0, LikelihoodRatio.of(-3, -3.0000001).statistic());
    }

    /** Calculated by hand from the formulas. */
    @Test
    void criteria_of_models() {
        InformationCriteria two = new InformationCriteria(-50, 2, 20);
        assertEquals(104, two.aic());
        assertEquals(104 + 12 / 17.0, two.aicc().orElseThrow(), 1e-12);
        assertEquals(100 + 2 * Math.log(20), two.bic(), 1e-12);
        assertEquals(OptionalDouble.empty(), new InformationCriteria(-50, 2, 3).aicc());
        assertEquals(Double.POSITIVE_INFINITY, new InformationCriteria(Double.NEGATIVE_INFINITY, 0, 1).aic());
        assertThrows(IllegalArgumentException.class, () -> new InformationCriteria(Double.NaN, 0, 1));
    }
}
