package cutout

// Raw returns a shape of rings that are taken as they are.
func Raw(outline []Point, holes ...[]Point) Shape { return Shape{outline, holes} }

// Fit is what turns a big number back into a length.
var Fit = fit
